import type { Plane } from './picture.ts';

/** Half as wide and half as high: the mean of each 2 × 2 pixels. An odd last column or row is left out. */
export function halved({ width, height, values, coding }: Plane): Plane {
  const [wide, high] = [Math.max(1, width >> 1), Math.max(1, height >> 1)];
  const [right, below] = [width > 1 ? 1 : 0, height > 1 ? width : 0];
  const half = new Float32Array(wide * high);
  for (let row = 0, to = 0; row < high; row++) {
    for (let column = 0, at = 2 * row * width; column < wide; column++, at += 2, to++) {
      const upper = (values[at] ?? 0) + (values[at + right] ?? 0);
      const lower = (values[at + below] ?? 0) + (values[at + below + right] ?? 0);
      half[to] = (upper + lower) / 4;
    }
  }
  return { width: wide, height: high, values: half, coding };
}
