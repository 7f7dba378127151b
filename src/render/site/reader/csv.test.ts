import { parse as parseOther } from 'csv-parse/sync';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { formatCsv } from './csv.ts';

/** Two readers that are not ours: papaparse 5.7.1 and csv-parse 7.0.3. */
const readers: readonly [string, (text: string) => unknown][] = [
  ['papaparse', (text) => Papa.parse<string[]>(text, { skipEmptyLines: false }).data.slice(0, -1)],
  ['csv-parse', (text) => parseOther(text, { bom: true, relax_column_count: true })],
];

describe.each(readers)('a file of cells, read by %s', (_, read) => {
  it('comes back as it was, quotes, commas and line ends included', () => {
    const rows = [
      ['Part', 'Note'],
      ['Resistor, 10 kΩ', 'says "R2"'],
      ['two\r\nlines', ' kept '],
      ['', 'ünïcode 元 שלום'],
    ];
    expect(read(formatCsv(rows))).toEqual(rows);
  });

  it('comes back as it was for any text that is no formula', () => {
    const cell = fc
      .string({ unit: 'grapheme', maxLength: 12 })
      .filter((text) => !/^[\s\p{Cc}]*[=+\-@＝＋－＠]|^[\t\r\n\ufeff]/u.test(text));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, fc.constant('end')), { minLength: 1, maxLength: 5 }), (rows) => {
        expect(read(formatCsv(rows))).toEqual(rows);
      }),
      { seed: 4, numRuns: 60 },
    );
  });
});

describe('formatCsv', () => {
  it('ends every line with CR LF, the last one too, and begins with the mark of UTF-8', () => {
    expect(
      formatCsv([
        ['a', 'b'],
        ['1', '2'],
      ]),
    ).toBe('\ufeffa,b\r\n1,2\r\n');
  });

  // What spreadsheets take for formulas: OWASP, CSV injection.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1', '=HYPERLINK("http://x.example","y")'])(
    'makes plain text of %j',
    (cell) => {
      const read = Papa.parse<string[]>(formatCsv([[cell, 'x']])).data[0]?.[0];
      expect(read).toBe(`'${cell}`);
    },
  );

  it('leaves a sign inside a cell alone', () => {
    expect(formatCsv([['5 V - 12 V', 'a=b']])).toBe('\ufeff5 V - 12 V,a=b\r\n');
  });
});
