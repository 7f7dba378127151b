import type { Span, TextPlace } from '#core/place.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';

/** One cell of any table: its words without quotes or markup, and the span as written. */
export interface TableCell {
  readonly text: string;
  readonly span: Span;
}

/** A table of whatever kind of file: the cells of its header, and those of each row below. Rows may be ragged. */
export interface TextTable {
  readonly header: readonly TableCell[];
  readonly rows: readonly (readonly TableCell[])[];
}

/** Where a cell stands, without the spaces around it. */
export function placeOfCell(source: SourceText, { span }: TableCell): TextPlace {
  const words = source.text.slice(span[0], span[1]);
  const start = span[0] + words.length - words.trimStart().length;
  return placeOf(source, words.trim() === '' ? span : [start, start + words.trim().length]);
}

/** Where a row stands, from its first cell to its last. */
export function placeOfRow(source: SourceText, row: readonly TableCell[]): TextPlace {
  return placeOf(source, [row[0]?.span[0] ?? 0, row.at(-1)?.span[1] ?? 0]);
}
