import type { PartsList } from '#core/part.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import { findHeader } from '../csv/findHeader.ts';
import { lexCsv } from '../csv/lexCsv.ts';
import { tablesBeside } from '../csv/tablesBeside.ts';
import { placeOfRow, type TextTable } from '../csv/textTable.ts';
import { partColumnsOf } from './partColumns.ts';
import { PartIds } from './partIds.ts';
import { type ReadParts, readPartsRows } from './readPartsTable.ts';
import { partsThreshold, scoreParts } from './scoreParts.ts';

/**
 * Reads a bill of materials from a table of any delimiter and heading style. Null where no row of it heads the columns
 * of a parts list. Rows that say nothing, repeat the header or state a total are passed over; a word alone in a row
 * is the section of the rows below it. `takenIds` are the ids of parts in other lists.
 */
export function readPartsList(
  source: SourceText,
  takenIds?: ReadonlySet<string>,
): { list: PartsList; problems: Problem[] } | null {
  const { rows } = lexCsv(source);
  const header = findHeader(rows, scoreParts);
  if (header === null || header.score < partsThreshold) return null;
  const ids = new PartIds(takenIds);
  const read = tablesBeside(rows, header.index).map((table) => readTable(source, table, ids));
  const list: PartsList = {
    columns: read.flatMap(({ list: { columns } }) => columns),
    parts: read.flatMap(({ list: { parts } }) => parts).sort((a, b) => a.place.span[0] - b.place.span[0]),
  };
  return { list, problems: read.flatMap(({ problems }) => problems) };
}

function readTable(source: SourceText, table: TextTable, ids: PartIds): ReadParts {
  const columns = partColumnsOf(table);
  if (scoreParts(table, columns) >= partsThreshold) return readPartsRows(source, table, columns, ids);
  return {
    list: { columns: table.header.map(({ text }) => ({ header: text.trim(), meaning: null })), parts: [] },
    problems: [
      {
        place: placeOfRow(source, table.header),
        message: 'Another table stands beside the parts list; its columns were expected to name parts, and do not.',
        remedy: 'Nothing, if it is meant to be apart. If its rows are parts, head its columns as those of the list.',
      },
    ],
  };
}
