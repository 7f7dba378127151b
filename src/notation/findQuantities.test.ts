import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findQuantities } from './findQuantities.ts';
import { formatQuantity } from './formatQuantity.ts';

function found(text: string): string[] {
  return findQuantities(text).map(({ start, end }) => text.slice(start, end));
}

describe('findQuantities', () => {
  it.each([
    ['R1 is 330 Ω and C1 is 100 nF.', ['330 Ω', '100 nF']],
    ['A 330-ohm resistor, a 10k one, a 4k7 and a 470R.', ['330-ohm', '10k', '4k7', '470R']],
    ['33k or 49.9k', ['33k', '49.9k']],
    ['1M beside 100n and 10\u00b5', ['1M', '100n', '10\u00b5']],
    ['Set it to −5 °C, ±5 %, 2.2\u03bcF, 1/4 W.', ['−5 °C', '±5 %', '2.2\u03bcF', '1/4 W']],
    ['It draws 20 mA at 5 V (60 mW).', ['20 mA', '5 V', '60 mW']],
    ['Wait 5 s, then cut 30 cm of wire', ['5 s', '30 cm']],
    ['10\u00a0000 Ω', ['10\u00a0000 Ω']],
  ])('finds the quantities of “%s”', (text, expected) => {
    expect(found(text)).toEqual(expected);
  });

  it.each([
    ['a bare number', 'Fit 4 screws and 470 more.'],
    ['an identifier', 'GPIO5V, D5V, 1N4148, 2N2222, WS2812B, ESP32-S3, x5V_EN'],
    ['a file name or a path', 'see fig-5V.png, photos/5V, 5V.png'],
    ['a range', 'It takes 3.3–5 V, or 3-5 V.'],
    ['a rate', 'at 5 m/s and 100 ppm/K'],
    ['an area', 'wire of 2.5 mm²'],
    ['a decade or a film format', 'the 1980s, a 4K film, 1080p, 8k'],
    ['the width of a key', 'keys of 1u and 1.5u'],
    ['the word in', 'put 3 in the box'],
    ['a call', 'delay 5 s(x)'],
    ['a number that has two readings', 'a 1,000 mAh cell'],
    ['a colour of light', 'a 2700K lamp'],
  ])('finds none in %s', (_, text) => {
    expect(found(text)).toEqual([]);
  });

  it('gives spans that hold what it read', () => {
    const text = '5 V … ½ W 😀 20 mA';
    expect(findQuantities(text).map(({ quantity, start, end }) => [text.slice(start, end), quantity.text])).toEqual([
      ['5 V', '5 V'],
      ['½ W', '½ W'],
      ['20 mA', '20 mA'],
    ]);
  });

  it('finds whatever the one notation writes between words', () => {
    const kinds = fc.constantFrom('resistance', 'capacitance', 'voltage', 'current', 'frequency', 'power' as const);
    fc.assert(
      fc.property(kinds, fc.double({ min: 1e-9, max: 1e6, noNaN: true }), (kind, si) => {
        const text = formatQuantity(kind, si);
        // A bare farad is left to Fahrenheit, and nobody writes a power of ten in a sentence.
        fc.pre(!text.endsWith(' F') && !/\de/u.test(text));
        expect(found(`use ${text}, then go on`)).toEqual([text]);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('stays quick on long runs of digits, points and blanks', () => {
    for (const piece of ['1', '1.', '1,1', '1/', '1 ', ' ', '±', '1\u00a0111']) {
      const started = performance.now();
      findQuantities(piece.repeat(20_000));
      expect(performance.now() - started).toBeLessThan(2000);
    }
  });
});
