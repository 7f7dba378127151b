import type { Part } from '#core/part.ts';
import { rememberFor } from '#core/remember.ts';
import { tokensOf } from '#notation/names.ts';
import { type RefClass, refClass } from '#notation/refs.ts';
import table from './knowledge/partKinds.json';

export type PartKind = keyof typeof table.kinds;

/**
 * What a row of a parts list names: by the last noun of the first clause of its description that holds one, else by
 * the letters of its reference. Null where neither tells.
 */
export const partKind = rememberFor((part: Part): PartKind | null => {
  for (const clause of clausesOf(part.description)) {
    const kind = lastNamed(tokensOf(clause));
    if (kind !== null) return kind;
  }
  const [ref] = part.refs;
  const letters = ref === undefined ? null : refClass(ref);
  return letters === null ? null : (byLetters[letters] ?? null);
});

/** What follows a preposition tells what the part is for, not what it is. */
function clausesOf(description: string): string[] {
  return description
    .split(/[,;:()[\]/|]|\s[–—-]\s|\.\s/u)
    .map((clause) => clause.split(/(?:^|\s)(?:for|with|of|to|from|in|on|per|by|without|as|holds?)\s/iu)[0] ?? '');
}

function lastNamed(tokens: readonly string[]): PartKind | null {
  for (let end = tokens.length; end > 0; end--) {
    for (let length = Math.min(longest, end); length > 0; length--) {
      const kind = byName.get(tokens.slice(end - length, end).join(' '));
      if (kind !== undefined) return kind;
    }
  }
  return null;
}

const names = Object.entries(table.kinds).flatMap(([kind, all]) =>
  all.map((name) => [tokensOf(name).join(' '), kind as PartKind] as const),
);
const byName: ReadonlyMap<string, PartKind> = new Map(names);
const longest = Math.max(...names.map(([name]) => name.split(' ').length));

const byLetters: Partial<Record<RefClass, PartKind>> = {
  resistor: 'resistor',
  capacitor: 'capacitor',
  inductor: 'inductor',
  diode: 'diode',
  led: 'led',
  transistor: 'transistor',
  ic: 'chip',
  fuse: 'fuse',
  crystal: 'crystal',
  connector: 'connector',
  battery: 'battery',
  wire: 'wire',
};
