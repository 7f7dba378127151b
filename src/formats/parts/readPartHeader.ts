import type { PartColumn } from '#core/part.ts';
import { type HeaderWords, headerWords } from '../csv/headerWords.ts';
import table from './partHeaders.json';

/** A meaning, or the unit that a quantity in another column is counted in. */
export type PartMeaning = PartColumn | 'unit';

/** What a header of a parts list can mean, most likely first; the cells below decide between several. */
export interface PartHeader extends HeaderWords {
  readonly text: string;
  readonly meanings: readonly PartMeaning[];
  /** How surely the words alone tell: 1 for a known heading, less for a known ending and for several meanings. */
  readonly certainty: number;
}

/** Reads a header of a parts list by its words alone. */
export function readPartHeader(text: string): PartHeader {
  const header = headerWords(text);
  const [meanings, certainty] = meaningsOf(header.words);
  return { ...header, text: text.trim(), meanings, certainty };
}

/** Whether a header names a running number of rows. */
export function countsRows(header: PartHeader): boolean {
  return table.rows.includes(header.words);
}

function meaningsOf(words: string): [readonly PartMeaning[], number] {
  const exact = phrases.get(words);
  if (exact !== undefined) return [[exact], 1];
  const either = eithers.get(words);
  if (either !== undefined) return [either, 0.6];
  if (words === '' || table.nothing.includes(words)) return [[], 0];
  const opening = openings.find(([phrase]) => words.startsWith(`${phrase} `));
  const ending = endings.find(([phrase]) => words.endsWith(` ${phrase}`));
  const found = opening ?? ending;
  return found === undefined ? [[], 0] : [[found[1]], 0.8];
}

const phrases: ReadonlyMap<string, PartMeaning> = new Map(inverted(table.phrases));
const eithers: ReadonlyMap<string, readonly PartMeaning[]> = new Map(
  Object.entries(table.either as Record<string, PartMeaning[]>),
);
const openings = inverted(table.openings);
// The longest ending tells most: 'part link' before 'link'.
const endings = inverted(table.endings).sort(([a], [b]) => b.length - a.length);

function inverted(byMeaning: Partial<Record<PartColumn, readonly string[]>>): [string, PartMeaning][] {
  return Object.entries(byMeaning).flatMap(([meaning, all]) =>
    all.map((phrase): [string, PartMeaning] => [phrase, meaning as PartColumn]),
  );
}
