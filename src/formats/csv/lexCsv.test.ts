import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { formatCell, lexCsv } from './lexCsv.ts';

const sourceOf = (text: string): SourceText => ({
  file: 'table.csv',
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});
const lex = (text: string) => lexCsv(sourceOf(text));
const rowsOf = (text: string) => lex(text).rows.map(({ cells }) => cells.map((cell) => cell.text));

describe('lexCsv', () => {
  it('finds the delimiter that cuts every row alike', () => {
    expect(lex('Part;Value\nR1;4,7\nR2;0,5\n').delimiter).toBe(';');
    expect(lex('Ref\tQty\tNote\n"R1, R2"\t2\ta, b\n').delimiter).toBe('\t');
    expect(lex('ref|qty\nR1|1\n').delimiter).toBe('|');
    expect(lex('Ref,Qty,Note\nR1,1,a;b\nR2,1,c;d\n').delimiter).toBe(',');
    expect(lex('1,5;2,5\n3,5;4,5\n').delimiter).toBe(';');
    expect(lex('just words\n').delimiter).toBe(',');
  });
  it('sees past title lines that no delimiter cuts', () => {
    expect(lex('Tide lamp\nrevision 2\nRef;Qty\nR1;1\nR2;1').delimiter).toBe(';');
  });
  it('obeys a sep= line and leaves it out of the rows', () => {
    const table = lex('sep=;\r\na,b;c\r\n');
    expect(table.delimiter).toBe(';');
    expect(table.rows.map(({ line, cells }) => [line, cells.length])).toEqual([[2, 2]]);
  });
  it('ends rows at LF, CRLF and CR and numbers them by line', () => {
    const { rows } = lex('a,b\nc,"d\r\nd"\re,f\r\n\ng,h');
    expect(rows.map(({ line }) => line)).toEqual([1, 2, 4, 5, 6]);
    expect(rows[1]?.cells[1]?.text).toBe('d\r\nd');
    expect(rows[3]?.cells.map(({ text }) => text)).toEqual(['']);
  });
  it('keeps a quote inside a bare cell as it stands', () => {
    expect(rowsOf('3" screw,2\n')).toEqual([['3" screw', '2']]);
  });
  it('takes lone quotes inside a quoted cell as meant', () => {
    expect(rowsOf('"5" display",2\n')).toEqual([['5" display', '2']]);
  });
  it('loses no rows to a quote that nobody closes', () => {
    expect(rowsOf('"open,1\nR2,"10k, 1%",3\nR3,x,4')).toEqual([
      ['"open', '1'],
      ['R2', '10k, 1%', '3'],
      ['R3', 'x', '4'],
    ]);
    expect(rowsOf('"5" display,1\nfoo",2\n')).toEqual([
      ['"5" display', '1'],
      ['foo"', '2'],
    ]);
    expect(rowsOf('a,"open\nb,c\n')).toEqual([
      ['a', '"open'],
      ['b', 'c'],
    ]);
  });
  it('passes over spaces around a quoted cell', () => {
    expect(rowsOf('R1, "10k, 1%" ,2')).toEqual([['R1', '10k, 1%', '2']]);
  });
  it('keeps the empty cell after a trailing delimiter', () => {
    expect(rowsOf('a;b;\n1;2;\n')).toEqual([
      ['a', 'b', ''],
      ['1', '2', ''],
    ]);
  });
  it('covers every character of any text by cells, delimiters and ends of lines', () => {
    const text = fc.string({ unit: fc.constantFrom('"', ',', ';', '\n', '\r', ' ', 'a', '\t'), maxLength: 60 });
    fc.assert(
      fc.property(text, (any) => {
        const { rows, delimiter } = lex(any);
        const cells = rows.map((row) => row.cells.map(({ span }) => any.slice(span[0], span[1])).join(delimiter));
        const ends = rows.map((row, i) => any.slice(row.span[1], rows[i + 1]?.span[0] ?? any.length));
        const from = rows[0]?.span[0] ?? 0;
        expect(any.slice(0, from) + rows.map((_, i) => `${cells[i]}${ends[i]}`).join('')).toBe(any);
        expect(ends.every((end, i) => /^(\r\n|\r|\n)$/.test(end) || (end === '' && i === ends.length - 1))).toBe(true);
        const lines = lineStartsOf(any);
        expect(rows.every(({ span, line }) => lines[line - 1] === span[0])).toBe(true);
      }),
      { numRuns: 2000, seed: 3 },
    );
  });
  it('takes no longer over quotes that are never closed than over a good table', () => {
    const timeOf = (piece: string) => {
      const text = piece.repeat(300_000 / piece.length);
      const before = performance.now();
      lex(text);
      return performance.now() - before;
    };
    const good = Math.max(timeOf('a,b\n'), 10);
    // Looking through the rest of the text at each quote would take thousands of times as long.
    for (const piece of [',"a', ',""x', '"a\n', '" ', ',"\n""']) expect(timeOf(piece) / good).toBeLessThan(50);
  });
});

describe('formatCell', () => {
  it('quotes only where it must', () => {
    expect(formatCell('10 kΩ', ',')).toBe('10 kΩ');
    expect(formatCell('R1, R2', ',')).toBe('"R1, R2"');
    expect(formatCell('R1, R2', ';')).toBe('R1, R2');
    expect(formatCell('5" display', ';')).toBe('"5"" display"');
    expect(formatCell(' lead', ',')).toBe('" lead"');
  });
});
