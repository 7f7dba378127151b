import type { Four } from '../geometry/homographyOfFour.ts';
import type { ImagePoint } from '../geometry/points.ts';
import { lineThrough, meetingOf } from './lines.ts';

/**
 * Four corners around a convex outline, near to the smallest such: the side that costs least area is left out, its
 * neighbours being drawn on until they meet, until four are left. Null for an outline of fewer than four sides, or where
 * sides that are left do not meet.
 */
export function surroundingFour(outline: readonly ImagePoint[]): Four | null {
  const corners = [...outline];
  while (corners.length > 4) {
    const at = (index: number) => corners[(index + corners.length) % corners.length] ?? { column: 0, row: 0 };
    let cheapest: { index: number; cost: number; tip: ImagePoint } | null = null;
    for (let index = 0; index < corners.length; index++) {
      const [from, to] = [at(index), at(index + 1)];
      const tip = tipOver(at(index - 1), from, to, at(index + 2));
      if (tip === null) continue;
      const cost = Math.abs(
        (from.column - tip.column) * (to.row - tip.row) - (from.row - tip.row) * (to.column - tip.column),
      );
      if (cheapest === null || cost < cheapest.cost) cheapest = { index, cost, tip };
    }
    if (cheapest === null) return null;
    corners[cheapest.index] = cheapest.tip;
    corners.splice((cheapest.index + 1) % corners.length, 1);
  }
  const [first, second, third, fourth] = corners;
  if (first === undefined || second === undefined || third === undefined || fourth === undefined) return null;
  return [first, second, third, fourth];
}

/** Where the sides before and after one meet beyond it; null where they part. */
function tipOver(before: ImagePoint, from: ImagePoint, to: ImagePoint, after: ImagePoint): ImagePoint | null {
  const tip = meetingOf(lineThrough(before, from), lineThrough(after, to));
  if (tip === null) return null;
  const isOnward = (back: ImagePoint, end: ImagePoint) =>
    (tip.column - end.column) * (end.column - back.column) + (tip.row - end.row) * (end.row - back.row) >= 0;
  return isOnward(before, from) && isOnward(after, to) ? tip : null;
}
