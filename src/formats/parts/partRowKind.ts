import { parseRefs } from '#notation/refs.ts';
import type { TableCell } from '../csv/textTable.ts';
import { cellText } from './partCells.ts';
import type { PartColumns } from './partColumns.ts';

/** What a row of a parts list is. `heading` is the name of a group of rows below it. */
export type PartRowKind = 'blank' | 'header' | 'total' | 'heading' | 'part' | 'aside';

type Row = readonly TableCell[];

/** Tells what each row is, since some can only be told by what follows. */
export function partRowKinds(rows: readonly Row[], columns: PartColumns): PartRowKind[] {
  const kinds = rows.map((row, index) => plainKind(row, columns, index === 0 || isBlankRow(rows[index - 1] ?? [])));
  const told = [...kinds];
  let next = -1;
  for (let index = kinds.length - 1; index >= 0; index--) {
    if (kinds[index] === 'blank') continue;
    if (kinds[index] === 'heading' && !headsRows(kinds, index, next)) told[index] = 'part';
    next = index;
  }
  return told;
}

/** A heading is followed by a fuller row, or by a second heading; names below one another are parts. */
function headsRows(kinds: readonly PartRowKind[], index: number, next: number): boolean {
  const opens = index === 0 || kinds[index - 1] === 'blank';
  return kinds[next] === 'part' || (opens && kinds[next] === 'heading' && next === index + 1);
}

function plainKind(row: Row, columns: PartColumns, opens: boolean): PartRowKind {
  const filled = row.flatMap((cell, column) =>
    cellText(cell) === '' || columns.rowNumbers.has(column) ? [] : [{ column, text: cellText(cell) }],
  );
  const [first] = filled;
  if (first === undefined) return 'blank';
  if (filled.every(({ column, text }) => text.toLowerCase() === columns.headers[column]?.text.toLowerCase()))
    return 'header';
  if (isTotal(row, columns)) return 'total';
  if (isHeadingCell(first.column, first.text, columns)) {
    if (filled.length === 1) return 'heading';
    // A remark beside a word, in a list where parts have quantities, is of a whole group if a blank row stands before.
    const remark = filled.length === 2 && columns.uses.get('note')?.includes(filled[1]?.column ?? -1) === true;
    if (remark && opens && columns.uses.has('quantity')) return 'heading';
  }
  const names = ['reference', 'description', 'value', 'mpn', 'package', 'supplierNumber', 'link'] as const;
  const isNamed = names.some((meaning) => columns.uses.get(meaning)?.some((column) => cellText(row[column]) !== ''));
  return isNamed ? 'part' : onlySums(row, columns) ? 'total' : 'aside';
}

function isBlankRow(row: Row): boolean {
  return row.every((cell) => cellText(cell) === '');
}

/** A word alone in the first column, or where names stand, opens a group; a reference alone is a part. */
function isHeadingCell(column: number, text: string, { uses, headers }: PartColumns): boolean {
  const isReference = uses.get('reference')?.includes(column) === true && parseRefs(text).refs.length > 0;
  if (isReference || /^(?:https?:|www\.)/i.test(text)) return false;
  const firstNamed = headers.findIndex(({ text: header }) => header !== '');
  const places = [0, firstNamed, uses.get('description')?.[0], uses.get('section')?.[0]];
  return places.includes(column);
}

const totalWord =
  /^(?:grand )?(?:sub-?\s?)?(?:total|totals|sum|summe|gesamt|gesamtsumme|somme|suma)\b[\s\p{L}()]*[:=]?$/iu;

/** The word alone in a cell, and no reference, amount or part number beside it. */
function isTotal(row: Row, { uses }: PartColumns): boolean {
  const labelled = row.some((cell) => totalWord.test(cellText(cell)));
  const identifies = (['reference', 'mpn', 'supplierNumber', 'link'] as const).some((meaning) =>
    uses.get(meaning)?.some((column) => cellText(row[column]) !== '' && !totalWord.test(cellText(row[column]))),
  );
  return labelled && !identifies;
}

function onlySums(row: Row, { uses }: PartColumns): boolean {
  const sums = new Set([...(uses.get('price') ?? []), ...(uses.get('total') ?? []), ...(uses.get('quantity') ?? [])]);
  return row.every((cell, column) => cellText(cell) === '' || sums.has(column));
}
