import { expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { readPartsList } from '#formats/parts/readPartsList.ts';
import { sparesOf } from './sparesOf.ts';

function sparesIn(text: string): number | null {
  const source: SourceText = {
    file: 'parts.csv',
    text,
    encoding: 'utf-8',
    bom: false,
    hash: 'h',
    lineStarts: lineStartsOf(text),
  };
  const part = readPartsList(source)?.list.parts[0];
  if (part === undefined) throw new Error('no part was read');
  return sparesOf(part, new Map([[source.file, source]]));
}

it.each([
  ['beside the amount', 'Reference,Quantity,Description\nR1,10 (+4),Resistor 330 Ω\n', 4],
  ['in a column of their own', 'Reference,Quantity,Description,Spares\nR1,10,Resistor 330 Ω,2\n', 2],
  ['nowhere', 'Reference,Quantity,Description,Spares\nR1,10,Resistor 330 Ω,\n', null],
])('spares are counted where they stand %s', (_, text, spares) => {
  expect(sparesIn(text)).toBe(spares);
});
