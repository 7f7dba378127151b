/**
 * A plane seen from elsewhere: the 3 × 3 matrix row by row that takes (column, row, 1) to a multiple of the seen
 * (column, row, 1). Scaled so that its last entry is 1 where that entry is not zero.
 */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** Leaves every point where it is. */
export const sameView: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** The same view with its last entry 1; where that entry is next to nothing, with squares that sum up to 1. */
export function scaledHomography(h: Homography): Homography {
  const norm = Math.hypot(...h);
  const by = Math.abs(h[8]) > 1e-12 * norm ? h[8] : norm;
  return [h[0] / by, h[1] / by, h[2] / by, h[3] / by, h[4] / by, h[5] / by, h[6] / by, h[7] / by, h[8] / by];
}
