import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { formatCell, lexCsv } from '#formats/csv/lexCsv.ts';
import { lexRows } from '#formats/csv/lexRows.ts';
import truth from './rfc4180.json';

const sourceOf = (text: string): SourceText => ({
  file: 'table.csv',
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});
const rowsOf = (text: string) => lexCsv(sourceOf(text)).rows.map(({ cells }) => cells.map((cell) => cell.text));

describe('RFC 4180', () => {
  it.each(truth.cases)('is read as rule $rule', ({ text, rows }) => {
    expect(rowsOf(text)).toEqual(rows);
  });
  it('is written with the quotes that a library writes', () => {
    expect(truth.writing.cells.map((cell) => formatCell(cell, ',')).join(',')).toBe(truth.writing.text);
  });
});

// A row of one empty cell looks like an empty line; the libraries differ about it, so tables have two columns or more.
const cell = fc.oneof(
  fc.string({ maxLength: 8 }),
  fc.string({ unit: fc.constantFrom(',', ';', '\t', '|', '"', '\n', '\r', ' ', 'a', '4', 'µ', '🔧'), maxLength: 6 }),
);
const table = fc
  .integer({ min: 2, max: 6 })
  .chain((columns) =>
    fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: 1, maxLength: 8 }),
  );

describe('random tables', () => {
  it.each([',', ';', '\t', '|'])('read as csv-parse and papaparse read them when cut at %j', (delimiter) => {
    fc.assert(
      fc.property(table, fc.constantFrom('\n', '\r\n'), fc.boolean(), (rows, newline, ends) => {
        const text = Papa.unparse(rows, { delimiter, newline }) + (ends ? newline : '');
        const ours = lexRows(text, { delimiter, from: 0, line: 1 }).map(({ cells }) => cells.map((each) => each.text));
        const others: unknown = parse(text, { delimiter, record_delimiter: newline });
        expect(ours).toEqual(others);
        const papa = Papa.parse<string[]>(text, { delimiter, newline }).data;
        expect(ours).toEqual(ends ? papa.slice(0, -1) : papa);
        expect(ours).toEqual(rows);
      }),
      { numRuns: 500, seed: 4180 },
    );
  });
  it('read back from what formatCell writes', () => {
    fc.assert(
      fc.property(table, fc.constantFrom(',', ';', '\t', '|'), (rows, delimiter) => {
        const text = rows.map((row) => row.map((each) => formatCell(each, delimiter)).join(delimiter)).join('\n');
        const others: unknown = parse(text, { delimiter, record_delimiter: '\n' });
        expect(others).toEqual(rows);
      }),
      { numRuns: 500, seed: 4181 },
    );
  });
});
