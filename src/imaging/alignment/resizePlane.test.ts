import { describe, expect, it } from 'vitest';
import { blurPlane } from './blurPlane.ts';
import { boxMeans } from './evenLight.ts';
import { resizePlane, shrunken, sizeWithin } from './resizePlane.ts';

const plane = (width: number, height: number, values: readonly number[]) => ({
  width,
  height,
  values: Float32Array.from(values),
  coding: 'gamma' as const,
});

describe('a plane made smaller', () => {
  it('holds the mean of what each pixel covers, parts of pixels too', () => {
    expect([...resizePlane(plane(4, 2, [1, 3, 5, 7, 1, 3, 5, 7]), 2, 1).values]).toEqual([2, 6]);
    // Three pixels on two: the middle one goes half to each.
    expect([...resizePlane(plane(3, 1, [3, 6, 9]), 2, 1).values]).toEqual([expect.closeTo(4, 5), expect.closeTo(8, 5)]);
    expect([...resizePlane(plane(1, 3, [3, 6, 9]), 1, 2).values]).toEqual([expect.closeTo(4, 5), expect.closeTo(8, 5)]);
  });

  it('keeps channels apart', () => {
    expect([...shrunken(Uint8Array.of(10, 20, 30, 40, 60, 80), 2, 1, 1, 1, 3)]).toEqual([25, 40, 55]);
  });

  it('keeps its shape and is never enlarged', () => {
    expect(sizeWithin({ width: 400, height: 300 }, 100)).toEqual({ width: 100, height: 75 });
    expect(sizeWithin({ width: 40, height: 30 }, 100)).toEqual({ width: 40, height: 30 });
  });
});

describe('blurring', () => {
  it('spreads a point with the variance that it says, in both directions', () => {
    const values = new Array(31 * 25).fill(0);
    values[12 * 31 + 15] = 1;
    const { values: spread } = blurPlane(plane(31, 25, values), 2);
    let [sum, across, down] = [0, 0, 0];
    for (const [i, value] of spread.entries()) {
      sum += value;
      across += value * ((i % 31) - 15) ** 2;
      down += value * (Math.floor(i / 31) - 12) ** 2;
    }
    // Cut at three sigma, a Gaussian has 97 % of its variance left.
    expect([sum, across, down]).toEqual([
      expect.closeTo(1, 4),
      expect.closeTo(4 * 0.97, 0),
      expect.closeTo(4 * 0.97, 0),
    ]);
  });

  it('by squares takes the mean of what lies inside', () => {
    expect([...boxMeans(Float32Array.of(1, 2, 3, 4, 5, 6), 3, 2, 1)].map((value) => Number(value.toFixed(4)))).toEqual([
      3, 3.5, 4, 3, 3.5, 4,
    ]);
  });
});
