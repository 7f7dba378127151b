import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '#imaging/colour/deltaE2000.ts';
import { type Lab, labFromLinear, xyzFromLinear } from '#imaging/colour/labFromLinear.ts';
import { linearOf } from '#imaging/pixels/picture.ts';
import pairs from './colourPairs.json';

const lab = ([l = 0, a = 0, b = 0]: readonly number[]): Lab => ({ l, a, b });
const ofCodes = (...codes: readonly [number, number, number]) =>
  codes.map((code) => linearOf[code] ?? 0) as unknown as readonly [number, number, number];

describe('the difference of two colours', () => {
  it('is that of each published pair, both ways round', () => {
    expect(pairs).toHaveLength(34);
    for (const [one, other, difference] of pairs as [number[], number[], number][]) {
      expect(Math.abs(deltaE2000(lab(one), lab(other)) - difference)).toBeLessThan(5.1e-5);
      expect(Math.abs(deltaE2000(lab(other), lab(one)) - difference)).toBeLessThan(5.1e-5);
    }
  });
});

describe('CIELAB at D65', () => {
  it.each([
    [
      [255, 0, 0],
      [53.237, 80.09, 67.203],
    ],
    [
      [128, 128, 128],
      [53.585, 0, 0],
    ],
    [
      [255, 255, 255],
      [100, 0, 0],
    ],
  ] as const)('of the codes %s is as a second program has it', (codes, [l, a, b]) => {
    const ours = labFromLinear(...ofCodes(codes[0], codes[1], codes[2]));
    expect(Math.max(Math.abs(ours.l - l), Math.abs(ours.a - a), Math.abs(ours.b - b))).toBeLessThan(0.02);
  });
  it('is exactly neutral for greys', () => {
    for (const grey of [0.001, 0.18, 0.9]) {
      const { a, b } = labFromLinear(grey, grey, grey);
      expect(Math.hypot(a, b)).toBeLessThan(1e-10);
    }
  });
  it('stands on the tristimulus values of red', () => {
    const [x, y, z] = xyzFromLinear(1, 0, 0);
    expect(Math.max(Math.abs(x - 0.41239), Math.abs(y - 0.21264), Math.abs(z - 0.01933))).toBeLessThan(1e-4);
  });
});
