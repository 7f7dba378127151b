import { comparePins, type PinComparison } from '#notation/pins.ts';
import table from './boardLabels.json';

interface Family {
  readonly board: string;
  readonly not?: string;
  readonly labelIsNumber?: boolean;
  readonly labels?: Readonly<Record<string, number>>;
}

/**
 * Whether two names mean the same pin of a board that is described so: as notation tells, and where a printed
 * label (D5) meets a number, as the labels of that kind of board tell. `cannot-tell` for boards that are not known.
 */
export function comparePinsOn(board: string, a: string, b: string): PinComparison {
  const plain = comparePins(a, b);
  if (plain !== 'cannot-tell') return plain;
  const [first, second] = [pinNumberOn(board, a), pinNumberOn(board, b)];
  return first === null || second === null ? 'cannot-tell' : first === second ? 'same' : 'different';
}

/** Whether a board that is described so prints the numbers that code uses: its D5 is 5. */
export function isNumberedAsPrinted(board: string): boolean {
  return familyOf(board)?.labelIsNumber === true;
}

function familyOf(board: string): Family | null {
  const families: readonly Family[] = table.families;
  const text = board.toLowerCase();
  return (
    families.find(
      (family) =>
        new RegExp(family.board).test(text) && (family.not === undefined || !new RegExp(family.not).test(text)),
    ) ?? null
  );
}

/** The number that code uses for a pin of a board that is described so; null where only the board can tell. */
export function pinNumberOn(board: string, pin: string): number | null {
  const family = familyOf(board);
  const bare = /^(?:GPIO_?|IO|GP)?(\d{1,2})$/i.exec(pin.trim());
  if (bare !== null) return Number(bare[1]);
  const label = /^D(\d{1,2})$/i.exec(pin.trim());
  if (label === null || family === null) return null;
  if (family.labelIsNumber === true) return Number(label[1]);
  return family.labels?.[`D${label[1]}`] ?? null;
}
