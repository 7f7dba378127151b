import type { Homography } from './homography.ts';

/** Values row by row, as a plane has them, whatever they mean. */
interface Values {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

/**
 * A plane as it looks through `view`, which takes points of the plane that is wanted to points of the given one, blended
 * linearly between pixels; NaN outside.
 */
export function warpPlane(source: Values, view: Homography, width: number, height: number): Float32Array {
  const warped = new Float32Array(width * height);
  const from = source.values;
  const line = source.width;
  for (let row = 0, at = 0; row < height; row++) {
    for (let column = 0; column < width; column++, at++) {
      const depth = view[6] * column + view[7] * row + view[8];
      const x = (view[0] * column + view[1] * row + view[2]) / depth;
      const y = (view[3] * column + view[4] * row + view[5]) / depth;
      if (!(depth > 0 && x >= 0 && y >= 0 && x <= line - 1 && y <= source.height - 1)) {
        warped[at] = Number.NaN;
        continue;
      }
      const left = Math.min(Math.floor(x), Math.max(line - 2, 0));
      const top = Math.min(Math.floor(y), Math.max(source.height - 2, 0));
      const i = top * line + left;
      const right = line > 1 ? 1 : 0;
      const below = source.height > 1 ? line : 0;
      const upper = (from[i] ?? 0) * (1 - x + left) + (from[i + right] ?? 0) * (x - left);
      const lower = (from[i + below] ?? 0) * (1 - x + left) + (from[i + below + right] ?? 0) * (x - left);
      warped[at] = upper * (1 - y + top) + lower * (y - top);
    }
  }
  return warped;
}
