import { composeHomographies } from './composeHomographies.ts';
import type { Homography } from './homography.ts';
import { invertHomography } from './invertHomography.ts';
import type { ImagePoint } from './points.ts';
import { smallestEigenvector } from './smallestEigenvector.ts';

/** The same spot in two pictures. */
export interface PointPair {
  readonly from: ImagePoint;
  readonly to: ImagePoint;
}

/**
 * The view that takes points to others with the least algebraic error, from four pairs or more: the normalised direct
 * linear transform (R. Hartley, A. Zisserman, "Multiple View Geometry", 2nd edition, algorithm 4.2). Null for fewer
 * pairs and where they lie so that more than one view fits. Truth: tests/truth/geometry.
 */
export function solveHomography(pairs: readonly PointPair[]): Homography | null {
  if (pairs.length < 4) return null;
  const from = centring(pairs.map((pair) => pair.from));
  const to = centring(pairs.map((pair) => pair.to));
  const back = to && invertHomography(to);
  if (!from || !to || !back) return null;
  const matrix = new Float64Array(81);
  for (const pair of pairs) {
    const x = from[0] * pair.from.column + from[2];
    const y = from[0] * pair.from.row + from[5];
    const u = to[0] * pair.to.column + to[2];
    const v = to[0] * pair.to.row + to[5];
    addSquare(matrix, [0, 0, 0, -x, -y, -1, v * x, v * y, v]);
    addSquare(matrix, [x, y, 1, 0, 0, 0, -u * x, -u * y, -u]);
  }
  const { vector, gap } = smallestEigenvector(matrix, 9);
  if (!(gap > 1e-12)) return null;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = vector;
  const normal: Homography = [a, b, c, d, e, f, g, h, i];
  if (invertHomography(normal) === null) return null;
  return composeHomographies(back, composeHomographies(normal, from));
}

/** Moves points so that their middle is the origin and their mean distance from it √2; null where all are one. */
function centring(points: readonly ImagePoint[]): Homography | null {
  const column = points.reduce((sum, point) => sum + point.column, 0) / points.length;
  const row = points.reduce((sum, point) => sum + point.row, 0) / points.length;
  const distance = points.reduce((sum, p) => sum + Math.hypot(p.column - column, p.row - row), 0) / points.length;
  if (!(distance > 0)) return null;
  const scale = Math.SQRT2 / distance;
  return [scale, 0, -scale * column, 0, scale, -scale * row, 0, 0, 1];
}

function addSquare(matrix: Float64Array, line: readonly number[]): void {
  for (let i = 0; i < 9; i++) {
    for (let j = 0; j < 9; j++) matrix[i * 9 + j] = (matrix[i * 9 + j] ?? 0) + (line[i] ?? 0) * (line[j] ?? 0);
  }
}
