import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { readToolBullets, readTools } from './readTools.ts';

const sourceOf = (text: string): SourceText => ({
  file: 'tools.csv',
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});
const tools = (text: string) => readTools(sourceOf(text))?.tools.map(({ place: _, ...tool }) => tool);
const itemsOf = (text: string) =>
  [...text.matchAll(/[^\n]+/g)].map((match) => ({ span: [match.index, match.index + match[0].length] as const }));
const bullets = (text: string) =>
  readToolBullets(sourceOf(text), itemsOf(text)).tools.map(({ place: _, ...tool }) => tool);

describe('readTools', () => {
  it('reads name, need, link and note', () => {
    expect(
      tools('name,needed,link,note\nsoldering iron,yes,https://lintel.example/p/3,350 °C\nmagnifier,no,,\n'),
    ).toEqual([
      { name: 'soldering iron', needed: true, link: 'https://lintel.example/p/3', note: '350 °C' },
      { name: 'magnifier', needed: false, link: null, note: null },
    ]);
  });
  it.each([
    ['Tool,Necessity', 'file,nice to have', false],
    ['Tool,Necessity', 'file,must have', true],
    ['Tool,Optional', 'file,yes', false],
    ['Tool,Optional', 'file,', true],
    ['Tool,Note', 'file (optional),', false],
    ['Tool', 'file', true],
  ])('reads under %s that %s is needed: %s', (header, row, needed) => {
    expect(tools(`${header}\n${row}\n`)).toMatchObject([{ name: 'file', needed }]);
  });
  it('reads a list of one column without a header', () => {
    expect(tools('soldering iron\nside cutters\n')?.map(({ name }) => name)).toEqual([
      'soldering iron',
      'side cutters',
    ]);
  });
  it('says of a row without a name that it was not read', () => {
    expect(readTools(sourceOf('tool,note\n,for M3\nfile,\n'))?.problems).toMatchObject([{ place: { line: 2 } }]);
  });
  it('gives nothing for an empty file', () => {
    expect(readTools(sourceOf('\n\n'))).toBeNull();
  });
});

describe('readToolBullets', () => {
  it('reads one tool an item, with what is said beside it', () => {
    expect(
      bullets(
        'soldering iron\nisopropyl alcohol for cleaning\n[Multimeter](https://lintel.example/m) (nice to have)\n**Tweezers**, optional. Fine ones.',
      ),
    ).toEqual([
      { name: 'soldering iron', needed: true, link: null, note: null },
      { name: 'isopropyl alcohol', needed: true, link: null, note: 'for cleaning' },
      { name: 'Multimeter', needed: false, link: 'https://lintel.example/m', note: 'nice to have' },
      { name: 'Tweezers', needed: false, link: null, note: 'optional. Fine ones.' },
    ]);
  });
  it('accounts for every item, whatever stands in it', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.string({ minLength: 1 }).filter((text) => !text.includes('\n')),
          { maxLength: 8 },
        ),
        (lines) => {
          const text = lines.join('\n');
          const items = itemsOf(text);
          const read = readToolBullets(sourceOf(text), items);
          expect(read.tools.length + read.problems.length).toBe(items.length);
        },
      ),
      { numRuns: 300, seed: 4 },
    );
  });
});
