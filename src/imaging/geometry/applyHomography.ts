import type { Homography } from './homography.ts';
import type { ImagePoint } from './points.ts';

/** Where a point is seen; infinite where the view puts it on its horizon. */
export function applyHomography(h: Homography, { column, row }: ImagePoint): ImagePoint {
  const depth = h[6] * column + h[7] * row + h[8];
  return {
    column: (h[0] * column + h[1] * row + h[2]) / depth,
    row: (h[3] * column + h[4] * row + h[5]) / depth,
  };
}
