import type { WiringColumn } from '#core/connection.ts';
import { parseWiringEnd } from '#notation/pins.ts';
import { headerWords } from '../csv/headerWords.ts';
import type { TableCell, TextTable } from '../csv/textTable.ts';
import table from './wiringHeaders.json';

/** Columns of a wiring table; the pin of an end can stand in a column of its own beside its part. */
export type WiringMeaning = WiringColumn | 'fromPart' | 'toPart';

/** The column of each meaning that a table has. */
export type WiringColumns = ReadonlyMap<WiringMeaning, number>;

/** Finds the columns by their headers; the first of two that mean the same. */
export function wiringColumnsOf(header: readonly TableCell[]): WiringColumns {
  const columns = new Map<WiringMeaning, number>();
  for (const [column, { text }] of header.entries()) {
    const meaning = meanings.get(headerWords(text).words);
    if (meaning !== undefined && !columns.has(meaning)) columns.set(meaning, column);
  }
  return columns;
}

/** How well a table's columns and cells make a wiring table, from 0 to 1. */
export function scoreWiring({ header, rows }: TextTable): number {
  const columns = wiringColumnsOf(header);
  if (!columns.has('from') || !columns.has('to')) return 0;
  const filled = rows.slice(0, rowsLookedAt).filter((row) => row.filter(({ text }) => text.trim() !== '').length > 1);
  const whole = filled.filter((row) => endOf(row, columns, 'from') !== null && endOf(row, columns, 'to') !== null);
  // A table that is headed and still empty is one to be filled in.
  if (filled.length === 0) return columns.size > 2 ? 0.6 : 0;
  return whole.length / filled.length;
}

/** From here on a table is read as wiring: half its rows must join two pins. */
export const wiringThreshold = 0.5;
const rowsLookedAt = 60;

/** The end that a row states in one cell, or in two, the part and its pin. */
export function endOf(
  row: readonly TableCell[],
  columns: WiringColumns,
  end: 'from' | 'to',
): ReturnType<typeof parseWiringEnd> {
  const textOf = (meaning: WiringMeaning) => row[columns.get(meaning) ?? -1]?.text.trim() ?? '';
  const pin = textOf(end);
  if (!columns.has(`${end}Part`)) return parseWiringEnd(pin);
  const part = textOf(`${end}Part`);
  return part === '' || pin === '' ? null : { ref: part.toUpperCase(), pin };
}

const { source: _, ...phrases } = table;
const meanings: ReadonlyMap<string, WiringMeaning> = new Map(
  Object.entries(phrases).flatMap(([meaning, all]) =>
    all.map((phrase): [string, WiringMeaning] => [phrase, meaning as WiringMeaning]),
  ),
);
