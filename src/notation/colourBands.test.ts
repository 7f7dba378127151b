import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colourBandsOf, parseColourBands } from './colourBands.ts';
import { preferredSeries } from './series.ts';

describe('parseColourBands', () => {
  it('takes three bands for ±20 %', () => {
    expect(parseColourBands(['yellow', 'violet', 'red'])?.tolerance?.si).toBe(0.2);
  });
  it('knows colours by other spellings and by their two letters', () => {
    expect(parseColourBands(['Gray', 'purple', 'RD', 'gd'])?.value.si).toBe(8700);
  });
  it.each([
    ['read from the wrong end', ['gold', 'red', 'violet', 'yellow']],
    ['led by black', ['black', 'violet', 'red', 'gold']],
    ['of an unknown colour', ['yellow', 'mauve', 'red', 'gold']],
    ['two in number', ['yellow', 'violet']],
    ['seven in number', ['red', 'red', 'red', 'red', 'brown', 'red', 'red']],
    ['ended by a colour without a temperature coefficient', ['red', 'red', 'black', 'black', 'brown', 'white']],
    ['a lone band that is not black', ['red']],
    ['none', []],
  ])('reads nothing in bands that are %s', (_, bands) => {
    expect(parseColourBands(bands)).toBeNull();
  });
});

describe('colourBandsOf', () => {
  it('gives the bands of the values that every drawer holds', () => {
    expect(colourBandsOf(330, 0.05, 4)).toEqual(['orange', 'orange', 'brown', 'gold']);
    expect(colourBandsOf(4700, 0.01, 5)).toEqual(['yellow', 'violet', 'black', 'brown', 'brown']);
    expect(colourBandsOf(0.47, 0.05, 4)).toEqual(['yellow', 'violet', 'silver', 'gold']);
  });
  it('gives a link one black band', () => {
    expect(colourBandsOf(0, 0.05, 4)).toEqual(['black']);
  });
  it.each([
    ['more digits than bands', 4990, 0.01, 4],
    ['a tolerance without a colour', 4700, 0.03, 4],
    ['no band for ±20 %', 4700, 0.2, 4],
    ['too small a value', 0.001, 0.05, 4],
    ['too large a value', 1e12, 0.05, 4],
    ['a negative value', -1, 0.05, 4],
    ['no number', Number.NaN, 0.05, 4],
  ] as const)('gives none for %s', (_, ohms, tolerance, bands) => {
    expect(colourBandsOf(ohms, tolerance, bands)).toBeNull();
  });
  it('is read back as the same value and tolerance', () => {
    const tolerances = fc.constantFrom(0.0025, 0.005, 0.01, 0.02, 0.05, 0.1);
    fc.assert(
      fc.property(
        fc.constantFrom(...preferredSeries(96)),
        fc.integer({ min: -3, max: 6 }),
        tolerances,
        (m, e, tolerance) => {
          const ohms = Number(`${m}e${e}`);
          const read = parseColourBands(colourBandsOf(ohms, tolerance, 5) ?? []);
          expect([read?.value.si, read?.tolerance?.si]).toEqual([ohms, tolerance]);
        },
      ),
      { seed: 6 },
    );
  });
});
