import { describe, expect, it } from 'vitest';
import { differingBits, layoutDistance, signatureOf } from '#imaging/likeness/signatureOf.ts';
import { ssim } from '#imaging/likeness/ssim.ts';
import { pictureFrom } from '#imaging/pixels/picture.ts';

const plane = (width: number, height: number, of: (x: number, y: number) => number) => ({
  width,
  height,
  values: Float32Array.from({ length: width * height }, (_, i) => of(i % width, Math.floor(i / width))),
});
const picture = (width: number, height: number, of: (x: number, y: number) => readonly number[]) =>
  pictureFrom(
    width,
    height,
    Uint8Array.from(Array.from({ length: width * height }, (_, i) => of(i % width, Math.floor(i / width))).flat()),
  );

describe('structural similarity', () => {
  // scikit-image 0.19.3 (gaussian_weights, sigma 1.5, use_sample_covariance False) and ssim.js 3.5.0, see SOURCE.md.
  const ramp = plane(32, 32, (x) => (8 * x) % 256);
  it('is what two libraries compute for a ramp, a lighter one and its negative', () => {
    expect(ssim(ramp, ramp, 255)).toBe(1);
    const lighter = plane(32, 32, (x) => Math.min(255, ((8 * x) % 256) + 10));
    const negative = plane(32, 32, (x) => 255 - ((8 * x) % 256));
    expect(ssim(ramp, lighter, 255)).toBeCloseTo(0.994438, 5);
    expect(ssim(ramp, negative, 255)).toBeCloseTo(-0.496202, 5);
  });

  it('has a closed form for even planes, of any shape and range', () => {
    const [dark, light] = [plane(17, 40, () => 100), plane(17, 40, () => 120)];
    expect(ssim(dark, light, 255)).toBeCloseTo((2 * 100 * 120 + 6.5025) / (100 ** 2 + 120 ** 2 + 6.5025), 6);
    expect(
      ssim(
        plane(17, 40, () => 100 / 255),
        plane(17, 40, () => 120 / 255),
      ),
    ).toBeCloseTo(0.983611, 5);
  });

  it('leaves out windows that hold nothing, and says when none is left', () => {
    const holed = plane(32, 32, (x, y) => (y > 20 ? Number.NaN : (8 * x) % 256));
    expect(ssim(ramp, holed, 255)).toBeCloseTo(1, 6);
    expect(
      ssim(
        plane(10, 40, () => 1),
        plane(10, 40, () => 1),
      ),
    ).toBeNull();
  });
});

describe('the signature of a picture', () => {
  // The DCT of this ramp as OpenCV computes it leaves one coefficient above the median, see SOURCE.md.
  it('has one bit set for a horizontal ramp', () => {
    const ramp = picture(32, 32, (x) => [8 * x, 8 * x, 8 * x]);
    expect(signatureOf(ramp).hash).toBe('8000000000000000');
  });

  it('stays when the picture is enlarged, and is another for another picture', () => {
    const of = (scale: number, turned: boolean) =>
      picture(48 * scale, 36 * scale, (x, y) => {
        const [u, v] = turned
          ? [(y + 0.5) / (36 * scale), (x + 0.5) / (48 * scale)]
          : [(x + 0.5) / (48 * scale), (y + 0.5) / (36 * scale)];
        const value = 128 + 90 * Math.sin(7 * u) * Math.cos(4 * v + 1) + 20 * u;
        return [value, value * 0.8, 255 * v];
      });
    expect(differingBits(signatureOf(of(1, false)), signatureOf(of(4, false)))).toBeLessThan(0.05);
    expect(differingBits(signatureOf(of(1, false)), signatureOf(of(1, true)))).toBeGreaterThan(0.2);
    expect(layoutDistance(signatureOf(of(1, false)), signatureOf(of(4, false)))).toBeLessThan(2);
    expect(layoutDistance(signatureOf(of(1, false)), signatureOf(of(1, true)))).toBeGreaterThan(20);
  });

  it('tells the colours of the fields, of small pictures too', () => {
    const halves = picture(6, 4, (x) => (x < 3 ? [255, 0, 0] : [0, 0, 255]));
    const { layout } = signatureOf(halves);
    expect(layout.slice(0, 3)).toEqual([255, 0, 0]);
    expect(layout.slice(9, 12)).toEqual([0, 0, 255]);
  });
});
