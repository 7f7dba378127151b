import type { CsvRow } from './lexRows.ts';
import { tablesBeside } from './tablesBeside.ts';
import type { TableCell, TextTable } from './textTable.ts';

/** The row that reads most like headers: its place among the rows, and how well it does, from 0 to 1. */
export interface FoundHeader {
  readonly index: number;
  readonly score: number;
}

/** Rows in which a header may stand below titles and addresses. */
const rowsSearched = 40;
/** Rows below a header that are looked at. */
const rowsLookedAt = 60;

/** Finds the row whose tables score best; the first of equals. Null where none scores at all. */
export function findHeader(rows: readonly CsvRow[], score: (table: TextTable) => number): FoundHeader | null {
  let best: FoundHeader | null = null;
  for (const [index, { cells }] of rows.slice(0, rowsSearched).entries()) {
    // A header that is repeated on a new page has fewer rows to answer for, and would win.
    if (!canBeHeader(cells) || (best !== null && sameTexts(cells, rows[best.index]?.cells ?? []))) continue;
    const reached = Math.max(0, ...tablesBeside(rows, index, rowsLookedAt).map((table) => score(table)));
    if (reached > (best?.score ?? 0)) best = { index, score: reached };
  }
  return best;
}

function sameTexts(a: readonly TableCell[], b: readonly TableCell[]): boolean {
  return a.length === b.length && a.every(({ text }, i) => text.trim() === b[i]?.text.trim());
}

/** Headers are words, and no row of them holds an address or more numbers than names. */
function canBeHeader(cells: readonly TableCell[]): boolean {
  const texts = cells.map(({ text }) => text.trim()).filter((text) => text !== '');
  const numbers = texts.filter((text) => /^[\p{Sc}~]?\s?[\d.,]+$/u.test(text)).length;
  return texts.length > 0 && texts.length > 2 * numbers && !texts.some((text) => /^https?:/i.test(text));
}
