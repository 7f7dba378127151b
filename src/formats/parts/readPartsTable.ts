import type { Part, PartsList } from '#core/part.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import { placeOfRow, type TableCell, type TextTable } from '../csv/textTable.ts';
import { cellText } from './partCells.ts';
import { meaningOfColumn, type PartColumns, partColumnsOf } from './partColumns.ts';
import { PartIds } from './partIds.ts';
import { partRowKinds } from './partRowKind.ts';
import { readPartRow } from './readPartRow.ts';
import { partsThreshold, scoreParts } from './scoreParts.ts';

export interface ReadParts {
  readonly list: PartsList;
  readonly problems: Problem[];
}

/** Reads a table of any file as a parts list; null where its columns make none. */
export function readPartsTable(source: SourceText, table: TextTable, takenIds?: ReadonlySet<string>): ReadParts | null {
  const columns = partColumnsOf(table);
  if (scoreParts(table, columns) < partsThreshold) return null;
  return readPartsRows(source, table, columns, new PartIds(takenIds));
}

/** Reads the rows of a table whose columns are known. */
export function readPartsRows(source: SourceText, table: TextTable, columns: PartColumns, ids: PartIds): ReadParts {
  const parts: Part[] = [];
  const problems: Problem[] = [];
  let section: string | null = null;
  const kinds = partRowKinds(table.rows, columns);
  for (const [index, kind] of kinds.entries()) {
    const row = table.rows[index] ?? [];
    if (kind === 'heading') {
      const above: string | null = kinds[index - 1] === 'heading' ? section : null;
      section = [above, headingOf(row, columns)].filter((name) => name !== null).join(' / ');
    } else if (kind === 'part') {
      const read = readPartRow(row, { source, columns, ids, section });
      parts.push(read.part);
      problems.push(...read.problems);
    } else if (kind === 'aside') {
      problems.push(unread(source, row));
    }
  }
  problems.push(...repeatedRefs(parts));
  return {
    list: {
      columns: table.header.map(({ text }, column) => ({
        header: text.trim(),
        meaning: meaningOfColumn(columns, column),
      })),
      parts,
    },
    problems,
  };
}

function headingOf(row: readonly TableCell[], columns: PartColumns): string {
  const cell = row.find((each, column) => cellText(each) !== '' && !columns.rowNumbers.has(column));
  return cellText(cell)
    .replace(/^[#*=\s-]+|[:=*\s-]+$/g, '')
    .trim();
}

function unread(source: SourceText, row: readonly TableCell[]): Problem {
  return {
    place: placeOfRow(source, row),
    message:
      'This row was expected to name a part by reference, description, value or part number, but fills none of these columns.',
    remedy: 'Name the part, or take the row out of the list.',
  };
}

/** References that stand in two rows: one of them is a slip. */
function repeatedRefs(parts: readonly Part[]): Problem[] {
  const first = new Map<string, Part>();
  const problems: Problem[] = [];
  for (const part of parts) {
    // Two boards may each have an R1.
    for (const ref of part.refs) {
      const key = `${part.section ?? ''}\n${ref}`;
      const before = first.get(key);
      if (before === undefined) {
        first.set(key, part);
      } else if (before !== part) {
        problems.push({
          place: part.cells.reference ?? part.place,
          message: `${ref} is listed twice: here and in line ${before.place.line}.`,
          remedy: 'Give each part a reference of its own, or join the rows.',
        });
      }
    }
  }
  return problems;
}
