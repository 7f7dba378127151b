import type { TableCell } from '../csv/textTable.ts';
import type { PartColumns } from './partColumns.ts';
import type { PartMeaning } from './readPartHeader.ts';

/** What a cell says; empty for marks that stand for nothing, such as '-', '~' and a list of commas only. */
export function cellText(cell: TableCell | undefined): string {
  const text = cell?.text.trim() ?? '';
  return /^(?:[-–—~,;/|\s.]*|n\/a|none|null|nil)$/i.test(text) ? '' : text;
}

/** The filled cells of a meaning, the most telling first. */
export function cellsOf(row: readonly TableCell[], columns: PartColumns, meaning: PartMeaning): FilledCell[] {
  return (columns.uses.get(meaning) ?? []).flatMap((column) => {
    const cell = row[column];
    const text = cellText(cell);
    return cell === undefined || text === '' ? [] : [{ column, cell, text }];
  });
}

/** A cell with words in it. */
export interface FilledCell {
  readonly column: number;
  readonly cell: TableCell;
  readonly text: string;
}
