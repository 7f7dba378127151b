import type { ImagePoint } from '../geometry/points.ts';

/** The corners of the least convex outline round points, in turn (A. Andrew, Inf. Proc. Letters 9(5), 1979). */
export function convexHull(points: readonly ImagePoint[]): readonly ImagePoint[] {
  const sorted = points.toSorted((p, q) => p.column - q.column || p.row - q.row);
  const lower = chain(sorted);
  const upper = chain(sorted.toReversed());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(points: readonly ImagePoint[]): readonly ImagePoint[] {
  const kept: ImagePoint[] = [];
  for (const point of points) {
    for (let p = kept.at(-2), q = kept.at(-1); p && q && turn(p, q, point) <= 0; p = kept.at(-2), q = kept.at(-1)) {
      kept.pop();
    }
    kept.push(point);
  }
  return kept;
}

function turn(p: ImagePoint, q: ImagePoint, r: ImagePoint): number {
  return (q.column - p.column) * (r.row - p.row) - (r.column - p.column) * (q.row - p.row);
}
