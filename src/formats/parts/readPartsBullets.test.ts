import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { readPartsBullets } from './readPartsBullets.ts';

const sourceOf = (text: string): SourceText => ({
  file: 'guide.md',
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});
const itemsOf = (text: string) =>
  [...text.matchAll(/[^\n]+/g)].map((match) => ({ span: [match.index, match.index + match[0].length] as const }));
const read = (text: string) => readPartsBullets(sourceOf(text), itemsOf(text));

/** An item as 'amount | references | description | note'. */
function told(item: string): string[] {
  return read(item).list.parts.map(({ amount, refs, description, note }) => {
    const claims =
      amount.is === 'unknown'
        ? ['?']
        : amount.claims.map(({ value }) => `${value.approximate ? '~' : ''}${value.n} ${value.unit}`);
    return [
      amount.is === 'contradicted' ? claims.join(' not ') : claims[0],
      refs.join(' '),
      description,
      note ?? '',
    ].join(' | ');
  });
}

describe('readPartsBullets', () => {
  it.each([
    ['**58 diodes 1N4148W**. They are small.', ['58 pcs |  | diodes 1N4148W | They are small.']],
    ['10 (+4) M2 spacers', ['10 pcs |  | M2 spacers | ']],
    ['2x4 pin header', ['? |  | 2x4 pin header | ']],
    ['soldering iron', ['? |  | soldering iron | ']],
    ['**A matching knob** for each encoder.', ['1 pcs |  | matching knob | for each encoder.']],
    [
      '**2 top plates**, **2 bottom plates** of acrylic',
      ['2 pcs |  | top plates | of acrylic', '2 pcs |  | bottom plates | of acrylic'],
    ],
    ['8 - 10 rubber feet', ['~8 pcs |  | rubber feet | ']],
    ['Two 1 kΩ resistors (R5, R6)', ['2 pcs | R5 R6 | 1 kΩ resistors | ']],
    ['Two 1 kΩ resistors (R5, R6, R7)', ['2 pcs not 3 pcs | R5 R6 R7 | 1 kΩ resistors | ']],
    ['R1, R2: 330 Ω resistors', ['2 pcs | R1 R2 | 330 Ω resistors | ']],
    ['R3 – 4k7 resistor (optional)', ['1 pcs | R3 | 4k7 resistor | optional']],
    ['H1: the ring', ['1 pcs | H1 | the ring | ']],
    ['30 cm of red wire', ['30 cm |  | red wire | ']],
    ['5 mm LED', ['? |  | 5 mm LED | ']],
    ['3.3 V regulator', ['? |  | 3.3 V regulator | ']],
    ['M3 screw × 4', ['4 pcs |  | M3 screw | ']],
    ['1x ESP32 board - the brain', ['1 pcs |  | ESP32 board | the brain']],
    ['- [x] 1 set of jumper wires', ['1 set |  | jumper wires | ']],
  ])('reads %j', (item, parts) => {
    expect(told(item)).toEqual(parts);
  });
  it('takes a word with a colon for the section of the items below it', () => {
    expect(read('Electronics:\n1 ring\n2 screws').list.parts.map(({ section, id }) => [section, id])).toEqual([
      ['Electronics', 'ring'],
      ['Electronics', 'screws'],
    ]);
  });
  it('reads a value as read and not declared, and a link as where to buy', () => {
    const [part] = read('2 resistors 330 Ω, see [shop](https://lintel.example/p/9)').list.parts;
    expect(part).toMatchObject({
      value: { claims: [{ basis: 'read', value: { si: 330 } }] },
      links: [{ kind: 'shop', url: 'https://lintel.example/p/9' }],
    });
  });
  it('points at the words of amount and name', () => {
    const [part] = read('**58 diodes 1N4148W**. Small.').list.parts;
    expect([part?.cells.quantity?.quote, part?.cells.description?.quote]).toEqual(['58', 'diodes 1N4148W']);
  });
  it('never throws, gives each part an id of its own and places in the text', () => {
    const line = fc.string({
      unit: fc.constantFrom(
        '2',
        '10',
        ' ',
        'R1',
        '–',
        '(',
        ')',
        '*',
        '**',
        '[',
        ']',
        'x',
        'screw',
        '.',
        ':',
        ',',
        'Ω',
        '`',
      ),
      minLength: 1,
      maxLength: 14,
    });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), (lines) => {
        const text = lines.join('\n');
        const { list, problems } = read(text);
        expect(new Set(list.parts.map(({ id }) => id)).size).toBe(list.parts.length);
        for (const { place, cells } of list.parts) {
          for (const each of [place, ...Object.values(cells)]) expect(text.slice(...each.span)).toBe(each.quote);
        }
        const headings = itemsOf(text).filter(({ span }) => /:\s*$/.test(text.slice(...span))).length;
        expect(list.parts.length + problems.length + headings).toBeGreaterThanOrEqual(itemsOf(text).length);
      }),
      { numRuns: 500, seed: 31 },
    );
  });
});
