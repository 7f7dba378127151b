import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstValue } from '#core/claim.ts';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { formatCell } from '../csv/lexCsv.ts';
import { readPartsTable } from './readPartsBullets.ts';
import { readPartsList } from './readPartsList.ts';

const sourceOf = (text: string): SourceText => ({
  file: 'parts.csv',
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});
function read(text: string, taken?: ReadonlySet<string>) {
  const list = readPartsList(sourceOf(text), taken);
  if (list === null) throw new Error('no parts list');
  return list;
}
const parts = (text: string) => read(text).list.parts;
const messages = (text: string) => read(text).problems.map(({ message }) => message);

describe('readPartsList', () => {
  it('gives nothing for a text that is no parts list', () => {
    expect(readPartsList(sourceOf('name,email\nInes,i@lintel.example\n'))).toBeNull();
    expect(readPartsList(sourceOf(''))).toBeNull();
  });
  it('gives a part without a reference a slug of its own', () => {
    const ids = (text: string, taken?: ReadonlySet<string>) => read(text, taken).list.parts.map(({ id }) => id);
    expect(ids('Item,Qty\nM3 screw,4\nM3 screw,2\n')).toEqual(['m3-screw', 'm3-screw-b']);
    expect(ids('Item,Qty\nM3 screw,4\n', new Set(['m3-screw']))).toEqual(['m3-screw-b']);
    expect(ids('Ref,Value,Qty\nR1,10k,1\n', new Set(['R1']))).toEqual(['r1-b']);
    expect(ids('Item,Qty\nA very long description of a thing that goes on and on,1\n')).toEqual([
      'a-very-long-description-of-a-thing-that',
    ]);
  });
  it('opens a section at a word alone in its row', () => {
    const list = parts('Item,Qty,Note\nLight:,,\nRing,1,\n\nCase,,\nShade,1,\nBase,1,\n');
    expect(list.map(({ section, description }) => `${section}/${description}`)).toEqual([
      'Light/Ring',
      'Case/Shade',
      'Case/Base',
    ]);
  });
  it('takes two words below one another for a section and one within it', () => {
    expect(parts('Item,Qty\n\nLight,\nInside,\nRing,1\n')[0]?.section).toBe('Light / Inside');
  });
  it('keeps names below one another at the end as parts', () => {
    expect(parts('Item,Qty\nRing,1\nSolder,\nFlux,\n').map(({ description }) => description)).toEqual([
      'Ring',
      'Solder',
      'Flux',
    ]);
  });
  it('skips totals, blank rows and headers that are repeated on a new page', () => {
    const text =
      'Ref,Item,Qty,Price\nR1,Resistor,1,0.10\n,,,\nRef,Item,Qty,Price\nR2,Resistor,1,0.10\nTotal,,2,0.20\n,,,0.20\n,Grand total (EUR),,0.20\n';
    expect(parts(text).map(({ id }) => id)).toEqual(['R1', 'R2']);
    expect(messages(text)).toEqual([]);
  });
  it('says of a row that names nothing that it was not read', () => {
    const { list, problems } = read('Ref,Item,Qty,Bin\nR1,Resistor,1,7\n,,3,9\n');
    expect(list.parts).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      place: { line: 3 },
      message: expect.stringContaining('expected to name a part'),
    });
  });
  it('holds the quantity against the count of references', () => {
    const [agrees, differs, none, set] = parts('Ref,Qty\n"R1, R2",2\n"R3, R4",3\n"R5, R6",\n"R7, R8",1 set\n');
    expect(agrees?.amount).toMatchObject({
      is: 'confirmed',
      claims: [{ places: [{ quote: '2' }] }, { places: [{ quote: '"R1, R2"' }] }],
    });
    expect(differs?.amount).toMatchObject({
      is: 'contradicted',
      claims: [{ value: { n: 3 }, places: [{ line: 3, quote: '3' }] }, { value: { n: 2 } }],
    });
    expect(none?.amount).toMatchObject({ is: 'confirmed', claims: [{ value: { n: 2, unit: 'pcs' } }] });
    expect(set?.amount).toMatchObject({ is: 'confirmed', claims: [{ value: { n: 1, unit: 'set' } }] });
  });
  it('does not let spares that were ordered contradict the references', () => {
    const [part] = parts('Ref,Order Qty,Value\n"R1, R2",10,1k\n');
    expect(part?.amount).toMatchObject({ is: 'confirmed', claims: [{ value: { n: 2 } }] });
  });
  it('says which cell holds no quantity, no reference or no price', () => {
    const { problems } = read('Ref,Qty,Price\nR1-,1,0.10\nR2,plenty,0.10\nR3,1,1-2 EUR\n');
    expect(problems.map(({ place }) => place.kind === 'text' && place.quote)).toEqual(['R1-', 'plenty', '1-2 EUR']);
  });
  it('takes a name in the place of a reference for a name', () => {
    const { list, problems } = read('Ref,Qty,Value\nPCB,1,\nR1,1,10k\n');
    expect(list.parts[0]).toMatchObject({ id: 'pcb', refs: [], description: 'PCB' });
    expect(problems).toEqual([]);
  });
  it('points out a reference that is listed twice, but not one in each of two sections', () => {
    expect(messages('Ref,Value\nR1,1k\n"R2,R1",2k\n')).toEqual(['R1 is listed twice: here and in line 2.']);
    expect(messages('Board,Ref,Value\nlamp,R1,1k\nbase,R1,2k\n')).toEqual([]);
  });
  it.each([
    ['Ref,Value,DNP', 'R1,1k,x', false],
    ['Ref,Value,DNP', 'R1,1k,', true],
    ['Ref,Value,DNP', 'R1,1k,0', true],
    ['Ref,Value,Fitted', 'R1,1k,no', false],
    ['Ref,Value,Fitted', 'R1,1k,yes', true],
    ['Ref,Value,Populate', 'R1,1k,DNP', false],
    ['Ref,Value,Qty', 'R1,DNP,1', false],
    ['Ref,Value,Qty', 'R1,10k DNP,1', false],
    ['Ref,Value,Qty', 'R1,10k,DNP', false],
    ['Ref,Value,Note', 'R1,10k,Not fitted on rev B', false],
    ['Ref,Value,Note', 'S1,switch,NC contact', true],
  ])('reads under %s that %s is fitted: %s', (header, row, fitted) => {
    expect(parts(`${header}\n${row}\n`)[0]?.fitted).toBe(fitted);
  });
  it('reads what a price is for', () => {
    const prices = (header: string, cell: string, note = '') => {
      const price = parts(`Item,Qty,${header},Notes\nscrew,4,${formatCell(cell, ',')},${note}\n`)[0]?.price;
      return price === null || price === undefined ? null : [price.amount, price.currency, price.per];
    };
    expect(prices('Price', '$0.82')).toEqual([0.82, null, 1]);
    expect(prices('Price', '3,20 € (pack of 25)')).toEqual([3.2, 'EUR', 25]);
    expect(prices('Price EUR', '4.50 per 100')).toEqual([4.5, 'EUR', 100]);
    expect(prices('Price per 10 (GBP)', '4.50')).toEqual([4.5, 'GBP', 10]);
    expect(prices('Price', '4.50', '50-pack')).toEqual([4.5, null, 50]);
    expect(prices('Price', '4.50', 'for 5 mm shafts')).toEqual([4.5, null, 1]);
    expect(prices('Line total', '8')).toEqual([8, null, 4]);
    expect(prices('Price', 'free')).toBeNull();
  });
  it('tells links by their address and their column', () => {
    const links = (header: string, cell: string) =>
      parts(`Item,Qty,${header}\nring,1,${cell}\n`)[0]?.links.map(({ kind, url }) => `${kind} ${url}`);
    expect(links('Link', 'https://lintel.example/p/7')).toEqual(['shop https://lintel.example/p/7']);
    expect(links('Link', 'https://lintel.example/ring.pdf')).toEqual(['datasheet https://lintel.example/ring.pdf']);
    expect(links('Datasheet', 'docs/ring.pdf')).toEqual(['datasheet docs/ring.pdf']);
    expect(links('Notes', 'see https://lintel.example/about.')).toEqual(['other https://lintel.example/about']);
    expect(links('Notes', 'models/base.stl')).toEqual(['file models/base.stl']);
    expect(links('Link', 'www.lintel.example/shop/7')).toEqual(['shop https://www.lintel.example/shop/7']);
    expect(links('Notes', 'and/or')).toEqual([]);
  });
  it('reads value, rating and body from one cell, and a value only described as read', () => {
    const [cap, described, named] = parts(
      'Ref,Value,Description\nC1,10uF 25V 0805,\nR1,,Resistor 4.7k 1%\nU1,,Regulator 3.3V\n',
    );
    expect(cap).toMatchObject({
      ratings: [{ si: 25 }],
      package: '0805',
      value: { claims: [{ basis: 'declared', value: { si: 1e-5 } }] },
    });
    expect(described).toMatchObject({
      value: { claims: [{ basis: 'read', value: { si: 4700 } }] },
      ratings: [{ text: '1%' }],
    });
    expect(named?.value).toEqual({ is: 'unknown', lacking: 'a value' });
  });
  it('keeps columns without a meaning by their header, also where headers repeat or lack', () => {
    expect(parts('Ref,Qty,Bin,Bin,,Note\nR1,1,7,8,9,a\n')[0]?.other).toEqual({
      Bin: '7',
      'Bin (2)': '8',
      'column 5': '9',
    });
  });
  it('reads two parts lists that stand side by side', () => {
    const list = parts('Ref,Qty,Value,,Ref,Qty,Value\nR1,1,1k,,C1,1,1u\nR2,1,2k,,C2,1,2u\n');
    expect(list.map(({ id, place }) => [id, place.quote])).toEqual([
      ['R1', 'R1,1,1k'],
      ['C1', 'C1,1,1u'],
      ['R2', 'R2,1,2k'],
      ['C2', 'C2,1,2u'],
    ]);
  });
  it('reads a table of any other file by its cells', () => {
    const text = '| Ref | Qty | Part |\n|---|---|---|\n| R1 | 1 | [resistor](https://lintel.example/p/1) |\n';
    const at = (words: string) => [text.indexOf(words), text.indexOf(words) + words.length] as const;
    const read = readPartsTable(sourceOf(text), {
      header: ['Ref', 'Qty', 'Part'].map((words) => ({ text: words, span: at(words) })),
      rows: [
        [
          { text: 'R1', span: at('R1') },
          { text: '1', span: at('1 |') },
          { text: 'resistor', span: at('[resistor](https://lintel.example/p/1)') },
        ],
      ],
    });
    expect(read?.list.parts[0]).toMatchObject({
      id: 'R1',
      description: 'resistor',
      links: [{ kind: 'shop', url: 'https://lintel.example/p/1' }],
    });
    expect(read?.list.parts[0]?.place.line).toBe(3);
  });
});

const word = fc.oneof(
  fc.string({ maxLength: 10 }),
  fc.constantFrom(
    'R1',
    'R1-R4',
    'C1, C2',
    '10k',
    '100nF 50V',
    '4',
    '~30 cm',
    'As needed',
    '$0.82',
    'DNP',
    'Total',
    '',
    '',
    'ESP32',
    'https://lintel.example/p/1',
    'x\ny',
    '"',
    '-',
    '1e999',
    'R1-R99999',
  ),
);
const headers = fc.uniqueArray(
  fc.constantFrom(
    'Ref',
    'Part',
    'Qty',
    'Quantity (TX)',
    'Quantity (RX)',
    'Value',
    'VALUE',
    'Description',
    'Price',
    'Unit price EUR',
    'Total',
    'DNP',
    'Status',
    'Link',
    'Note',
    'Unit',
    'Id',
    'Name',
    '',
    'Bin',
    'constructor',
    '__proto__',
  ),
  { minLength: 2, maxLength: 9 },
);

describe('any parts list', () => {
  it('is read without a throw, every filled row is accounted for, and every place is where its words are', () => {
    let lists = 0;
    fc.assert(
      fc.property(
        headers,
        fc.array(fc.array(word, { maxLength: 10 }), { maxLength: 12 }),
        fc.constantFrom(',', ';', '\t'),
        (header, rows, delimiter) => {
          const text = [header, ...rows]
            .map((row) => row.map((cell) => formatCell(cell, delimiter)).join(delimiter))
            .join('\n');
          const source = sourceOf(text);
          const read = readPartsList(source);
          if (read === null) return;
          lists++;
          for (const part of read.list.parts) {
            for (const place of [part.place, ...Object.values(part.cells)])
              expect(text.slice(...place.span)).toBe(place.quote);
            const n = firstValue(part.amount)?.n ?? 0;
            expect(n >= 0 && Number.isFinite(n)).toBe(true);
          }
          for (const { place } of read.problems)
            if (place.kind === 'text') expect(text.slice(...place.span)).toBe(place.quote);
          const ids = read.list.parts.map(({ id }) => id);
          expect(new Set(ids).size).toBe(ids.length);
        },
      ),
      { numRuns: 500, seed: 17 },
    );
    expect(lists).toBeGreaterThan(100);
  });
  it('keeps every row whose first cells name a part', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(99), word, word), { minLength: 1, maxLength: 20 }), (rows) => {
        const text = `Ref,Qty,Value,Bin\n${rows.map(([n, ...more]) => [`R${n + 1}`, '1', ...more].map((cell) => formatCell(cell, ',')).join(',')).join('\n')}`;
        expect(parts(text)).toHaveLength(rows.length);
      }),
      { numRuns: 100, seed: 18 },
    );
  });
  it('takes no longer for each row when there are many', () => {
    const timeOf = (rows: number) => {
      const text = `Ref,Qty,Value,Note\n${Array.from({ length: rows }, (_, i) => `R${i},1,10k 1%,see the drawing`).join('\n')}`;
      const before = performance.now();
      expect(parts(text)).toHaveLength(rows);
      return performance.now() - before;
    };
    timeOf(500);
    const [small, large] = [Math.max(timeOf(1000), 5), timeOf(16_000)];
    // Sixteen times the rows: 256 times as long if each row looked at all others.
    expect(large / small).toBeLessThan(100);
  });
});
