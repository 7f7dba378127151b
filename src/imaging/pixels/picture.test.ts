import { describe, expect, it } from 'vitest';
import { codedFromLinear, linearFromCoded, lumaOf, luminanceOf, pictureFrom } from './picture.ts';

describe('sRGB', () => {
  // IEC 61966-2-1: the linear part ends at 0.04045, and mid grey (code 119) has 18.4 % of the light of white.
  it('turns codes into light as the standard has it', () => {
    expect(linearFromCoded(0.04045)).toBeCloseTo(0.0031308, 6);
    expect(linearFromCoded(119 / 255)).toBeCloseTo(0.1845, 3);
    for (const value of [0, 0.001, 0.02, 0.18, 0.5, 1])
      expect(codedFromLinear(linearFromCoded(value))).toBeCloseTo(value, 6);
  });
});

describe('a picture', () => {
  const red = pictureFrom(2, 1, Uint8Array.of(255, 0, 0, 255, 255, 255));
  it('has the luma and luminance of BT.709', () => {
    expect([...lumaOf(red).values]).toEqual([expect.closeTo(0.2126, 5), expect.closeTo(1, 5)]);
    expect([...luminanceOf(red).values]).toEqual([expect.closeTo(0.2126, 5), expect.closeTo(1, 5)]);
    const grey = pictureFrom(1, 1, Uint8Array.of(119, 119, 119));
    expect(luminanceOf(grey).values[0]).toBeCloseTo(0.1845, 3);
  });

  it('refuses a buffer of another size', () => {
    expect(() => pictureFrom(2, 2, new Uint8Array(11))).toThrow();
  });
});
