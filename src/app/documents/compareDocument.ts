import type { Box } from '#core/place.ts';
import type { Comparison } from '../ports.ts';

/** JSON output of `compare`. */
export function compareDocument({ alignment, changes }: Comparison): Record<string, unknown> {
  return {
    format: 1,
    aligned: alignment !== null,
    confidence: alignment?.confidence ?? null,
    homography: alignment?.homography ?? null,
    changes:
      changes?.map(({ box, area, inSecond }) => ({
        box: numbersOf(box),
        area,
        inSecond: inSecond && numbersOf(inSecond),
      })) ?? null,
  };
}

function numbersOf({ x, y, width, height }: Box): readonly number[] {
  return [x, y, width, height];
}
