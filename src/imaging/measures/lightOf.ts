import { linearOf, type Picture } from '../pixels/picture.ts';

/** Linear light of each 4 × 4 pixels: red, green and blue in turn, 0 to 1, row by row. */
export interface Light {
  readonly width: number;
  readonly height: number;
  readonly rgb: Float32Array;
}

/** Pixels a side that become one place, and how far apart those are that are looked at. */
const [side, apart] = [4, 2];

/**
 * Light of the picture, small and therefore with little noise: the mean of four of each 16 pixels. What is left over at
 * right and bottom is left out.
 */
export function lightOf({ width, height, rgb }: Picture): Light {
  const [wide, high] = [Math.max(1, Math.floor(width / side)), Math.max(1, Math.floor(height / side))];
  const [right, below] = [width > apart ? 3 * apart : 0, height > apart ? 3 * apart * width : 0];
  const light = new Float32Array(3 * wide * high);
  for (let row = 0, to = 0; row < high; row++) {
    let at = 3 * row * side * width;
    for (let column = 0; column < wide; column++, at += 3 * side) {
      for (let channel = at; channel < at + 3; channel++, to++) {
        const upper = (linearOf[rgb[channel] ?? 0] ?? 0) + (linearOf[rgb[channel + right] ?? 0] ?? 0);
        const under = channel + below;
        const lower = (linearOf[rgb[under] ?? 0] ?? 0) + (linearOf[rgb[under + right] ?? 0] ?? 0);
        light[to] = (upper + lower) / 4;
      }
    }
  }
  return { width: wide, height: high, rgb: light };
}
