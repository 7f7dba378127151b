import { describe, expect, test } from 'vitest';
import { ledgerStyle } from '../../src/render/ledger/ledgerStyle.ts';
import { pageSheet, stylesheet as siteSheet } from '../../src/render/shared/stylesheet.ts';
import tokens from '../../src/render/shared/tokens.json';
import { gatherStyle } from '../../src/render/site/gatherStyle.ts';
import { contrastOf } from './contrast.ts';

const stylesheet = siteSheet + gatherStyle + pageSheet(ledgerStyle);

// Values of the library wcag-contrast 3.0.0 and of the formula in WCAG 2.2 (w3c/wcag, commit 58080bdb), to 4 digits.
const published: readonly [string, string, number][] = [
  ['#000000', '#ffffff', 21],
  ['#777777', '#ffffff', 4.4781],
  ['#767676', '#ffffff', 4.5422],
  ['#949494', '#ffffff', 3.0335],
  ['#959595', '#ffffff', 2.9953],
  ['#ff0000', '#ffffff', 3.9985],
  ['#0000ff', '#ffffff', 8.5925],
  ['#008000', '#ffffff', 5.1374],
  ['#ffff00', '#ffffff', 1.0738],
  ['#595959', '#ffffff', 7.0047],
  ['#0000ee', '#ffffff', 9.3976],
  ['#ffa500', '#000000', 10.6341],
];

describe('contrastOf', () => {
  test.each(published)('%s on %s is %d', (one, other, contrast) => {
    expect(Math.abs(contrastOf(one, other) - contrast)).toBeLessThanOrEqual(0.00005);
    expect(contrastOf(other, one)).toBe(contrastOf(one, other));
  });
});

const needed = { text: 4.5, line: 3 } as const;
const lights: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'by day': tokens.light,
  'at night': tokens.dark,
  'on paper': { ...tokens.light, lit: '#ffffff', paper: '#ffffff' },
};

describe.each(Object.entries(lights))('the colours of the page %s', (_, colours) => {
  const pairs = (['text', 'line'] as const).flatMap((use) => tokens[use].map((pair) => ({ use, pair })));

  test.each(pairs)('$pair stand out enough as $use', ({ use, pair: [on = '', ground = ''] }) => {
    expect(contrastOf(colours[on] ?? '', colours[ground] ?? '')).toBeGreaterThanOrEqual(needed[use]);
  });
});

test('every colour that the style sets type in is checked against both grounds', () => {
  const used = new Set([...stylesheet.matchAll(/[^-]color:var\(--(\w+)\)/g)].map((match) => match[1]));
  const checked = new Set(tokens.text.map(([on]) => on));
  expect(used.size).toBeGreaterThan(2);
  expect([...used].filter((colour) => !checked.has(colour ?? ''))).toEqual([]);
});

test('the style names no colour, font or picture but its own', () => {
  expect(stylesheet).not.toMatch(/url\(|@import|@font-face/);
  const named = [...stylesheet.matchAll(/#[0-9a-f]{3,8}\b/gi)].map((match) => match[0]);
  const own = new Set<string>([...Object.values(tokens.light), ...Object.values(tokens.dark), '#ffffff']);
  expect(named.filter((colour) => !own.has(colour))).toEqual([]);
});
