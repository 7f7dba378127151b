import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isPreferred, nearestPreferred, preferredSeries, type SeriesSize } from './series.ts';

const sizes = fc.constantFrom<SeriesSize>(3, 6, 12, 24, 48, 96, 192);

describe('nearestPreferred', () => {
  it('gives a preferred number that no other number of the series beats', () => {
    fc.assert(
      fc.property(sizes, fc.double({ min: 1e-12, max: 1e9, noNaN: true }), (n, value) => {
        const near = nearestPreferred(value, n);
        const distance = Math.abs(Math.log(near / value));
        expect(isPreferred(near, n)).toBe(true);
        for (const m of preferredSeries(n)) {
          for (let e = -16; e <= 10; e++) {
            expect(Math.abs(Math.log((m * 10 ** e) / value))).toBeGreaterThanOrEqual(distance - 1e-9);
          }
        }
      }),
      { seed: 7, numRuns: 60 },
    );
  });
  it('leaves a preferred number as it is, in any decade', () => {
    fc.assert(
      fc.property(sizes, fc.nat(), fc.integer({ min: -12, max: 9 }), (n, i, e) => {
        const series = preferredSeries(n);
        const value = Number(`${series[i % series.length] ?? 0}e${e}`);
        expect(nearestPreferred(value, n)).toBe(value);
      }),
      { seed: 8 },
    );
  });
  it('gives back what has no nearest number', () => {
    expect([0, -5, Number.POSITIVE_INFINITY].map((value) => nearestPreferred(value, 12))).toEqual([
      0,
      -5,
      Number.POSITIVE_INFINITY,
    ]);
  });
});

describe('isPreferred', () => {
  it('tells 4.7 kΩ from 5 kΩ in E12, and holds neither zero nor less for preferred', () => {
    expect([4700, 5000, 0, -47].map((value) => isPreferred(value, 12))).toEqual([true, false, false, false]);
  });
});
