import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { formatCell } from '../csv/lexCsv.ts';
import { readWiring, readWiringTable } from './readWiring.ts';

const sourceOf = (text: string): SourceText => ({
  file: 'wiring.csv',
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});
const read = (text: string) => readWiring(sourceOf(text));

describe('readWiring', () => {
  it('reads every column of a row, each with its place', () => {
    const [wire] =
      read('from,to,net,colour,gauge,length,note\nU1.D5,r1.1,DATA,green,26 AWG,12 cm,"keep short, please"\n')
        ?.connections ?? [];
    expect(wire).toMatchObject({
      id: 'R1.1~U1.D5',
      from: { ref: 'U1', pin: 'D5' },
      to: { ref: 'R1', pin: '1' },
      net: 'DATA',
      colour: 'green',
      gauge: '26 AWG',
      length: '12 cm',
      note: 'keep short, please',
      place: { line: 2 },
    });
    expect(wire?.cells.colour).toMatchObject({ quote: 'green', line: 2, column: 17 });
  });
  it.each([
    ['From;To;Color', 'U1.D5;R1.1;red'],
    ['pin A\tpin B\tWire color', 'U1.D5\tR1.1\tred'],
    ['From Part,From Pin,To Part,To Pin,Colour', 'U1,D5,R1,1,red'],
    ['Source,Destination,Wire colour', 'U1:D5,R1 pin 1,red'],
  ])('reads the ends and the colour under %s', (header, row) => {
    const { connections } = read(`${header}\n${row}\n`) ?? { connections: [] };
    expect(connections).toMatchObject([{ id: 'R1.1~U1.D5', colour: 'red', net: null }]);
  });
  it('points out a row that joins nothing, and reads the others', () => {
    const { connections, problems } = read('from,to\nU1.D5,R1.1\nU1.D6,somewhere\nU1.GND,\nU1.5V,H1.5V\n') ?? {
      connections: [],
      problems: [],
    };
    expect(connections.map(({ id }) => id)).toEqual(['R1.1~U1.D5', 'H1.5V~U1.5V']);
    expect(problems.map(({ place }) => place.kind === 'text' && place.line)).toEqual([3, 4]);
    expect(problems[0]?.message).toContain("'somewhere'");
  });
  it('keeps both rows of a connection that is listed twice, in either direction, and says so', () => {
    const { connections, problems } = read('from,to\nU1.D5,R1.1\nR1.1,U1.D5\n') ?? { connections: [], problems: [] };
    expect(connections).toHaveLength(2);
    expect(problems).toMatchObject([{ place: { line: 3 }, message: expect.stringContaining('joined twice') }]);
  });
  it('passes over blank rows, headings of groups and headers that are repeated', () => {
    const { connections, problems } = read('from,to\nPower,\nU1.5V,H1.5V\n,\nfrom,to\nU1.GND,H1.GND\n') ?? {
      connections: [],
      problems: [],
    };
    expect(connections).toHaveLength(2);
    expect(problems).toEqual([]);
  });
  it('gives nothing for other tables', () => {
    expect(read('from,to,when\nInes,Bo,Monday\n')).toBeNull();
    expect(read('Ref,Qty\nR1,1\n')).toBeNull();
    expect(read('')).toBeNull();
  });
  it('reads a table of any other file by its cells', () => {
    const text = '| from | to |\n|---|---|\n| U1.D5 | R1.1 |\n';
    const cell = (words: string) => ({
      text: words,
      span: [text.indexOf(words), text.indexOf(words) + words.length] as const,
    });
    const table = { header: [cell('from'), cell('to')], rows: [[cell('U1.D5'), cell('R1.1')]] };
    expect(readWiringTable(sourceOf(text), table)?.connections).toMatchObject([
      { id: 'R1.1~U1.D5', place: { line: 3, quote: 'U1.D5 | R1.1' } },
    ]);
  });
  it('never throws, and makes of every row with two words a connection or a problem', () => {
    const end = fc.oneof(
      fc.constantFrom('U1.D5', 'R1.1', 'BT1+', 'nowhere', 'x.y.z', '"', 'a,b'),
      fc.string({ maxLength: 8 }),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(end, end, fc.string({ maxLength: 5 })), { maxLength: 12 }), (rows) => {
        const text = ['from,to,note', ...rows.map((row) => row.map((cell) => formatCell(cell, ',')).join(','))].join(
          '\n',
        );
        const found = read(text);
        if (found === null) return;
        const full = rows.filter(
          ([from, to]) => from.trim() !== '' && to.trim() !== '' && !(from === 'from' && to === 'to'),
        );
        const repeats = found.problems.filter(({ message }) => message.includes('joined twice')).length;
        expect(found.connections.length + found.problems.length - repeats).toBeGreaterThanOrEqual(full.length);
        for (const { place, cells } of found.connections) {
          for (const each of [place, ...Object.values(cells)]) expect(text.slice(...each.span)).toBe(each.quote);
        }
      }),
      { numRuns: 200, seed: 6 },
    );
  });
});
