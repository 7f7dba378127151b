import { type Connection, connectionId, type WiringColumn } from '#core/connection.ts';
import type { TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import { parseWiringEnd } from '#notation/pins.ts';
import { findHeader } from '../csv/findHeader.ts';
import { lexCsv } from '../csv/lexCsv.ts';
import { tablesBeside } from '../csv/tablesBeside.ts';
import { placeOfCell, placeOfRow, type TableCell, type TextTable } from '../csv/textTable.ts';
import { endOf, scoreWiring, type WiringColumns, wiringColumnsOf, wiringThreshold } from './wiringColumns.ts';

export interface ReadWiring {
  readonly connections: Connection[];
  readonly problems: Problem[];
}

/**
 * Reads a wiring table of any delimiter: one row a connection, its ends in two columns ('from', 'to') or in four
 * (part and pin of each). Null where no row of the text heads such columns.
 */
export function readWiring(source: SourceText): ReadWiring | null {
  const { rows } = lexCsv(source);
  const header = findHeader(rows, scoreWiring);
  if (header === null || header.score < wiringThreshold) return null;
  const read = tablesBeside(rows, header.index).flatMap((table) => readWiringTable(source, table) ?? []);
  return read.length === 0
    ? null
    : { connections: read.flatMap((each) => each.connections), problems: read.flatMap((each) => each.problems) };
}

/** Reads a table of any file as wiring; null where its columns and cells make none. */
export function readWiringTable(source: SourceText, table: TextTable): ReadWiring | null {
  if (scoreWiring(table) < wiringThreshold) return null;
  const columns = wiringColumnsOf(table.header);
  const connections: Connection[] = [];
  const problems: Problem[] = [];
  for (const row of table.rows) {
    if (isHeading(row) || repeatsHeader(row, table.header)) continue;
    const connection = readRow(source, row, columns);
    if (connection === null) problems.push(noEnds(source, row, columns));
    else connections.push(connection);
  }
  return { connections, problems: [...problems, ...repeats(connections)] };
}

/** An empty row, or a word alone that heads a group of wires; a pin alone is a connection with an end missing. */
function isHeading(row: readonly TableCell[]): boolean {
  const [first, second] = row.filter(({ text }) => text.trim() !== '');
  return first === undefined || (second === undefined && first === row[0] && parseWiringEnd(first.text) === null);
}

function readRow(source: SourceText, row: readonly TableCell[], columns: WiringColumns): Connection | null {
  const from = endOf(row, columns, 'from');
  const to = endOf(row, columns, 'to');
  if (from === null || to === null) return null;
  const textOf = (meaning: WiringColumn) => {
    const text = row[columns.get(meaning) ?? -1]?.text.trim() ?? '';
    return text === '' || /^[-–—]$/.test(text) ? null : text;
  };
  return {
    id: connectionId(from, to),
    from,
    to,
    net: textOf('net'),
    colour: textOf('colour'),
    gauge: textOf('gauge'),
    length: textOf('length'),
    note: textOf('note'),
    place: placeOfRow(source, row),
    cells: cellPlaces(source, row, columns),
  };
}

function cellPlaces(source: SourceText, row: readonly TableCell[], columns: WiringColumns): Connection['cells'] {
  const places: Partial<Record<WiringColumn, TextPlace>> = {};
  for (const [meaning, column] of columns) {
    const cell = row[column];
    const isPlain = meaning !== 'fromPart' && meaning !== 'toPart';
    if (cell !== undefined && cell.text.trim() !== '' && isPlain) places[meaning] = placeOfCell(source, cell);
  }
  return places;
}

function repeatsHeader(row: readonly TableCell[], header: readonly TableCell[]): boolean {
  return row.every(
    (cell, column) => cell.text.trim().toLowerCase() === (header[column]?.text.trim().toLowerCase() ?? ''),
  );
}

function noEnds(source: SourceText, row: readonly TableCell[], columns: WiringColumns): Problem {
  const lacking = (['from', 'to'] as const).filter((end) => endOf(row, columns, end) === null);
  const cell = row[columns.get(lacking[0] ?? 'from') ?? 0];
  const found = cell === undefined || cell.text.trim() === '' ? 'nothing' : `'${cell.text.trim()}'`;
  return {
    place: cell === undefined || cell.text.trim() === '' ? placeOfRow(source, row) : placeOfCell(source, cell),
    message: `${found} was expected to be a pin of a part, such as U1.D5; the row joins nothing.`,
    remedy: `Write both ends as the part's reference, a full stop and the pin.`,
  };
}

/** Connections that are listed more than once, in whichever direction. Both rows stay. */
function repeats(connections: readonly Connection[]): Problem[] {
  const first = new Map<string, Connection>();
  return connections.flatMap((connection): Problem[] => {
    const before = first.get(connection.id);
    first.set(connection.id, before ?? connection);
    if (before === undefined) return [];
    const { from, to, place } = connection;
    return [
      {
        place,
        message: `${from.ref}.${from.pin} and ${to.ref}.${to.pin} are joined twice: here and in line ${before.place.line}.`,
        remedy: 'Take one of the rows out, or mend the end that is meant otherwise.',
      },
    ];
  });
}
