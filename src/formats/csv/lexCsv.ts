import type { SourceText } from '#core/sourceText.ts';
import { type Delimiter, findDelimiter } from './findDelimiter.ts';
import { type CsvRow, lexRows } from './lexRows.ts';

export type { CsvRow } from './lexRows.ts';

export interface CsvTable {
  readonly delimiter: Delimiter;
  readonly rows: readonly CsvRow[];
}

/**
 * Reads a table as RFC 4180 describes it, and with the usual bad habits: other delimiters (found by looking), a
 * leading `sep=` line, any end of line, quotes inside bare cells, quotes that are never closed. An empty line is a row
 * with one empty cell; the end of line after the last row begins no other.
 */
export function lexCsv(source: SourceText): CsvTable {
  const announced = announcedDelimiter(source.text);
  if (announced !== null) return { delimiter: announced.delimiter, rows: lexRows(source.text, announced) };
  const delimiter = findDelimiter(source.text);
  return { delimiter, rows: lexRows(source.text, { delimiter, from: 0, line: 1 }) };
}

/** A cell as it is written in a table: quoted where it holds what would end it, or spaces that would be lost. */
export function formatCell(text: string, delimiter: string): string {
  const needsQuotes = text.includes(delimiter) || /["\r\n]|^\s|\s$/.test(text);
  return needsQuotes ? `"${text.replaceAll('"', '""')}"` : text;
}

function announcedDelimiter(text: string): { delimiter: Delimiter; from: number; line: number } | null {
  const match = /^"?sep=([,;\t|])"?(?:\r\n|\r|\n|$)/i.exec(text);
  return match === null ? null : { delimiter: match[1] as Delimiter, from: match[0].length, line: 2 };
}
