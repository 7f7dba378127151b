import type { ImagePoint } from './points.ts';

/** The convex outline of points, clockwise as seen with rows downwards (A. Andrew, Inf. Process. Lett. 9(5), 1979). */
export function convexHull(points: readonly ImagePoint[]): readonly ImagePoint[] {
  const sorted = [...points].sort((one, other) => one.column - other.column || one.row - other.row);
  if (sorted.length < 3) return sorted;
  return [...chain(sorted), ...chain(sorted.reverse())];
}

function chain(points: readonly ImagePoint[]): ImagePoint[] {
  const kept: ImagePoint[] = [];
  for (const point of points) {
    for (;;) {
      const [before, last] = [kept[kept.length - 2], kept[kept.length - 1]];
      if (before === undefined || last === undefined || turnOf(before, last, point) > 0) break;
      kept.pop();
    }
    kept.push(point);
  }
  kept.pop();
  return kept;
}

/** Twice the area of the triangle; positive where the way turns clockwise, seen with rows downwards. */
export function turnOf(from: ImagePoint, by: ImagePoint, to: ImagePoint): number {
  return (by.column - from.column) * (to.row - from.row) - (by.row - from.row) * (to.column - from.column);
}

/** Area within an outline, in square pixels; positive where it runs clockwise, seen with rows downwards. */
export function areaWithin(outline: readonly ImagePoint[]): number {
  let twice = 0;
  outline.forEach((point, index) => {
    const next = outline[(index + 1) % outline.length] ?? point;
    twice += point.column * next.row - next.column * point.row;
  });
  return twice / 2;
}
