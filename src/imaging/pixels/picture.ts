import { assert } from '#core/failure.ts';

/** An upright picture, decoded small: red, green and blue of each pixel in turn, row by row, sRGB-coded, 0 to 255. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** One value a pixel, row by row, 0 to 1: `gamma`-coded as sRGB is, or `linear` in light. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
  readonly coding: 'gamma' | 'linear';
}

/** Checks the sizes, so that a swapped or cut buffer stops at once. */
export function pictureFrom(width: number, height: number, rgb: Uint8Array): Picture {
  assert(width > 0 && height > 0 && rgb.length === 3 * width * height, `${rgb.length} bytes for ${width} × ${height}`);
  return { width, height, rgb };
}

/** Weights of red, green and blue in luminance (ITU-R BT.709-6, item 3.2). */
export const luminanceWeights = [0.2126, 0.7152, 0.0722] as const;

/** Luma: the weighted sum of the coded values, as focus and likeness are judged. */
export function lumaOf(picture: Picture): Plane {
  return weighted(picture, 'gamma', (code) => code / 255);
}

/** Relative luminance: the weighted sum in linear light, as exposure is judged. */
export function luminanceOf(picture: Picture): Plane {
  return weighted(picture, 'linear', (code) => linearOf[code] ?? 0);
}

/** Linear light of each sRGB code, 0 to 1 (IEC 61966-2-1). */
export const linearOf: Float32Array = Float32Array.from({ length: 256 }, (_, code) => linearFromCoded(code / 255));

/** Linear light of a coded value, both 0 to 1 (IEC 61966-2-1). */
export function linearFromCoded(coded: number): number {
  return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
}

/** Coded value of linear light, both 0 to 1 (IEC 61966-2-1). */
export function codedFromLinear(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
}

function weighted({ width, height, rgb }: Picture, coding: Plane['coding'], of: (code: number) => number): Plane {
  const values = new Float32Array(width * height);
  const [red, green, blue] = luminanceWeights.map((weight) =>
    Float32Array.from({ length: 256 }, (_, code) => weight * of(code)),
  );
  assert(red !== undefined && green !== undefined && blue !== undefined, 'three weights');
  for (let i = 0, at = 0; i < values.length; i++, at += 3) {
    values[i] = (red[rgb[at] ?? 0] ?? 0) + (green[rgb[at + 1] ?? 0] ?? 0) + (blue[rgb[at + 2] ?? 0] ?? 0);
  }
  return { width, height, values, coding };
}
