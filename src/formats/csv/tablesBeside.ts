import type { CsvRow } from './lexRows.ts';
import type { TableCell, TextTable } from './textTable.ts';

/**
 * The tables that begin in a row of headers. A column without a header and without a word in it, between columns
 * that have some, parts one table from the next. Rows of all tables run side by side.
 */
export function tablesBeside(
  rows: readonly CsvRow[],
  headerIndex: number,
  mostRows = Number.POSITIVE_INFINITY,
): TextTable[] {
  const header = rows[headerIndex]?.cells ?? [];
  const body = rows.slice(headerIndex + 1, headerIndex + 1 + mostRows).map(({ cells }) => cells);
  const width = Math.max(header.length, ...lengthsOf(body));
  const isGap = (column: number) => isBlank(header[column]) && body.every((row) => isBlank(row[column]));
  const tables: TextTable[] = [];
  let start = 0;
  for (let column = 0; column <= width; column++) {
    if (column < width && !isGap(column)) continue;
    const cut = (cells: readonly TableCell[]) => cells.slice(start, column);
    if (cut(header).some((cell) => !isBlank(cell))) tables.push({ header: cut(header), rows: body.map(cut) });
    start = column + 1;
  }
  return tables;
}

function isBlank(cell: TableCell | undefined): boolean {
  return cell === undefined || cell.text.trim() === '';
}

/** Without spreading a large array into arguments. */
function lengthsOf(body: readonly (readonly TableCell[])[]): [number] {
  return [body.reduce((most, row) => Math.max(most, row.length), 0)];
}
