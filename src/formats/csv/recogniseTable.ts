import type { SourceText } from '#core/sourceText.ts';
import { meaningOfColumn, partColumnsOf } from '../parts/partColumns.ts';
import { partsThreshold, scoreParts } from '../parts/scoreParts.ts';
import { scoreTools, toolsThreshold } from '../tools/toolColumns.ts';
import { scoreWiring, wiringColumnsOf, wiringThreshold } from '../wiring/wiringColumns.ts';
import { findHeader } from './findHeader.ts';
import { type CsvRow, lexCsv } from './lexCsv.ts';

/** What a table is about, and what it was recognised by. */
export interface RecognisedTable {
  readonly kind: 'parts' | 'wiring' | 'tools' | 'other';
  /** Line of the headers, from 1; 0 where none were found. */
  readonly headerLine: number;
  /** 0 to 1; from the kind's own signs, so that two kinds can be weighed against each other. */
  readonly score: number;
  /** For people: which headers tell. */
  readonly why: string;
}

/** Recognises a table of any delimiter by its headers and by the cells below them. */
export function recogniseTable(source: SourceText): RecognisedTable {
  const { rows } = lexCsv(source);
  const kinds = [
    { kind: 'wiring', found: findHeader(rows, scoreWiring), least: wiringThreshold, name: wiringSigns },
    { kind: 'tools', found: findHeader(rows, scoreTools), least: toolsThreshold, name: toolSigns },
    { kind: 'parts', found: findHeader(rows, scoreParts), least: partsThreshold, name: partSigns },
  ] as const;
  // A list of wires or tools has plainer signs; a parts list can share headers with both.
  for (const { kind, found, least, name } of kinds) {
    if (found === null || found.score < least) continue;
    const row = rows[found.index];
    return { kind, headerLine: row?.line ?? 0, score: found.score, why: name(rows, found.index) };
  }
  return { kind: 'other', headerLine: 0, score: 0, why: 'no row heads the columns of parts, wires or tools' };
}

function partSigns(rows: readonly CsvRow[], index: number): string {
  const header = rows[index]?.cells ?? [];
  const columns = partColumnsOf({ header, rows: rows.slice(index + 1, index + 61).map(({ cells }) => cells) });
  const told = header.flatMap(({ text }, column) => {
    const meaning = meaningOfColumn(columns, column);
    return meaning === null ? [] : [`${meaning} (${text.trim()})`];
  });
  return `columns of a parts list: ${told.slice(0, 4).join(', ')}`;
}

function wiringSigns(rows: readonly CsvRow[], index: number): string {
  const header = rows[index]?.cells ?? [];
  const columns = wiringColumnsOf(header);
  const ends = (['from', 'to'] as const).map((end) => header[columns.get(end) ?? 0]?.text.trim() ?? '');
  return `rows that join two pins (${ends.join(', ')})`;
}

function toolSigns(rows: readonly CsvRow[], index: number): string {
  return `columns of a list of tools (${(rows[index]?.cells ?? []).map(({ text }) => text.trim()).join(', ')})`;
}
