import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { listItemsOf, readGuide, tablesOf } from './readGuide.ts';

function read(text: string) {
  const source: SourceText = {
    file: 'g.md',
    text,
    encoding: 'utf-8',
    bom: false,
    hash: '',
    lineStarts: lineStartsOf(text),
  };
  const section = readGuide([source], { fileExists: () => null }).instructions.sections[0];
  if (section === undefined) throw new Error('no section');
  return { source, section, words: ([start, end]: readonly [number, number]) => text.slice(start, end) };
}

describe('listItemsOf', () => {
  it('gives each item without its marker and without nested lists', () => {
    const { source, section, words } = read(
      '## Parts\n\n- **2** screws\n  of steel\n  - long ones\n- [ ] ring\n\nand\n\n1. lid\n',
    );
    expect(listItemsOf(section, source).map(({ span }) => words(span))).toEqual([
      '**2** screws\n  of steel',
      'ring',
      'lid',
    ]);
  });

  it('refuses a section of another file', () => {
    const { source, section } = read('## Parts\n\n- ring\n');
    expect(() => listItemsOf(section, { ...source, file: 'other.md' })).toThrow('own file');
  });
});

describe('tablesOf', () => {
  it('gives words and spans of each cell, with escaped bars, code and empty cells', () => {
    const { source, section, words } = read(
      '## Parts\r\n\r\n| Ref | Value \\| rating |\r\n|:----|---|\r\n| **R1** | `330 \\| Ω` |\r\n|  | x |\r\nR2 | 10 kΩ\r\n',
    );
    const [table] = tablesOf(section, source);
    expect(table?.header.map(({ text, span }) => [text, words(span)])).toEqual([
      ['Ref', 'Ref'],
      ['Value | rating', 'Value \\| rating'],
    ]);
    expect(table?.rows.map((row) => row.map(({ text, span }) => [text, words(span)]))).toEqual([
      [
        ['R1', '**R1**'],
        ['330 | Ω', '`330 \\| Ω`'],
      ],
      [
        ['', ''],
        ['x', 'x'],
      ],
      [
        ['R2', 'R2'],
        ['10 kΩ', '10 kΩ'],
      ],
    ]);
  });
});
