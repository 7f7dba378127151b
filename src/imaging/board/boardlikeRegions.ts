import { type ColourMixture, colourMixture } from '../colour/colourMixture.ts';
import type { Survey } from '../pixels/surveyPicture.ts';
import { closedMask } from './closedMask.ts';
import { type Region, regionsOf } from './regionsOf.ts';

/**
 * Regions that may be boards: not small, and not reaching the picture's edge. The picture's colours are taken in a few
 * groups; each group alone, each two of like tint (a board half in shade), and all groups that the border hardly has are
 * masks, closed over what lies on the board, finely and coarsely.
 */
export function* boardlikeRegions(survey: Survey): Generator<Region> {
  const { width, height } = survey;
  const every = Uint32Array.from({ length: Math.ceil((width * height) / 3) }, (_, n) => 3 * n);
  const mixture = colourMixture(survey, every, groups);
  const groupOf = nearestGroups(survey, mixture);
  const atBorder = shareOfBorder(groupOf, width, height, mixture.length);
  const chosen = [
    ...mixture.map((_, group) => [group]),
    ...likePairs(mixture),
    [...atBorder.keys()].filter((group) => (atBorder[group] ?? 0) <= hardly),
  ];
  for (const members of chosen) {
    const isMember = Uint8Array.from(mixture, (_, group) => (members.includes(group) ? 1 : 0));
    const mask = groupOf.map((group) => isMember[group] ?? 0);
    if (mask.reduce((sum, cell) => sum + cell, 0) < leastArea * width * height) continue;
    for (const radius of radii) {
      const regions = regionsOf(closedMask(mask, width, height, radius), width, height, leastArea * width * height);
      yield* regions.filter(({ isCut }) => !isCut);
    }
  }
}

const groups = 7;
/** Share of the border's cells. */
const hardly = 0.08;
/** In cells. */
const radii = [2, 4];
/** Share of the picture. */
const leastArea = 0.015;

/** Lightness counts less: it is what shade and uneven light change. */
function nearestGroups({ l, a, b }: Survey, mixture: ColourMixture): Uint8Array {
  const nearest = new Uint8Array(l.length);
  for (let cell = 0; cell < nearest.length; cell++) {
    let least = Number.POSITIVE_INFINITY;
    for (const [group, each] of mixture.entries()) {
      const square =
        0.5 * ((l[cell] ?? 0) - each.l) ** 2 + ((a[cell] ?? 0) - each.a) ** 2 + ((b[cell] ?? 0) - each.b) ** 2;
      if (square >= least) continue;
      least = square;
      nearest[cell] = group;
    }
  }
  return nearest;
}

function shareOfBorder(groupOf: Uint8Array, width: number, height: number, count: number): Float32Array {
  const shares = new Float32Array(count);
  const border = [...groupOf.keys()].filter((cell) => {
    const [column, row] = [cell % width, Math.floor(cell / width)];
    return Math.min(column, row, width - 1 - column, height - 1 - row) < 3;
  });
  for (const cell of border) {
    const group = groupOf[cell] ?? 0;
    shares[group] = (shares[group] ?? 0) + 1 / border.length;
  }
  return shares;
}

function likePairs(mixture: ColourMixture): number[][] {
  return mixture.flatMap((one, first) =>
    mixture.flatMap((other, second) => {
      const apart = 0.3 * Math.abs(one.l - other.l) + Math.hypot(one.a - other.a, one.b - other.b);
      return first < second && apart < 18 ? [[first, second]] : [];
    }),
  );
}
