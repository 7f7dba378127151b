import type { PinUse } from '#core/code.ts';
import { parsePin } from '#notation/pins.ts';
import { pinNumberOn } from './comparePinsOn.ts';
import table from './knowledge/pinFacts.json';

/** What a pin of a chip is for besides being a pin, and with which uses that does not go. */
export interface PinJob {
  readonly pins?: readonly string[];
  /** Every pin but these. */
  readonly otherThan?: readonly string[];
  /** Further words of the board's description; a pattern. */
  readonly board?: string;
  readonly uses: readonly PinUse[] | 'any';
  readonly when?: 'wifi' | 'serial' | 'pull-up' | 'pulled-up';
  /** Patterns: words in the pin's name, and in the guide, that show that the maker knows. */
  readonly unlessNamed?: string;
  readonly unlessTold?: string;
  readonly weight: 'halts' | 'slows' | 'tidy';
  readonly says: string;
  readonly then: string;
}

export interface PinFamily {
  readonly name: string;
  readonly board: string;
  readonly not: string;
  readonly source: string;
  /** Numbers of the pins that the chip has, from and to; absent where boards differ. */
  readonly there?: readonly (readonly [number, number])[];
  readonly jobs: readonly PinJob[];
}

/** The family of chips whose pins are known, by how the board is described; null where it is none or not certain. */
export function pinFamilyOf(board: string): PinFamily | null {
  const families = table.families as unknown as readonly PinFamily[];
  const found = families.filter((one) => matches(one.board, board) && !matches(one.not, board));
  return found.length === 1 ? (found[0] ?? null) : null;
}

/** The pin as the table of its family writes it: a number, or a label such as A6. Null where nobody can tell. */
export function pinKey(board: string, pin: string): string | null {
  const number = pinNumberOn(board, pin);
  if (number !== null) return `${number}`;
  const { family, number: label } = parsePin(pin);
  return family === 'analogue' ? `A${label}` : null;
}

/** Whether the chip has such a pin at all. */
export function isThere({ there }: PinFamily, key: string): boolean {
  return there === undefined || !/^\d+$/.test(key) || there.some(([from, to]) => from <= +key && +key <= to);
}

/** The jobs of a family that a pin with these uses runs into, its circumstances aside. */
export function jobsAgainst(family: PinFamily, board: string, key: string, uses: readonly PinUse[]): PinJob[] {
  return family.jobs.filter(
    (job) =>
      (job.pins?.includes(key) ?? (/^\d+$/.test(key) && job.otherThan?.includes(key) === false)) &&
      (job.board === undefined || matches(job.board, board)) &&
      uses.some((use) => (job.uses === 'any' ? use !== 'named' : job.uses.includes(use))),
  );
}

function matches(pattern: string, text: string): boolean {
  return new RegExp(pattern, 'i').test(text);
}
