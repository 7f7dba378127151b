import { applyHomography } from '../geometry/applyHomography.ts';
import { type Homography, sameView } from '../geometry/homography.ts';
import { type Four, homographyOfFour } from '../geometry/homographyOfFour.ts';
import { resizeHomography } from '../geometry/resizeHomography.ts';
import { robustHomography } from '../geometry/robustHomography.ts';
import type { PointPair } from '../geometry/solveHomography.ts';
import type { Picture } from '../pixels/picture.ts';
import { type Agreement, agreementOf } from './agreementOf.ts';
import { type Alignable, alignableOf } from './alignableOf.ts';
import { coarseViews } from './coarseViews.ts';
import { matchFeatures } from './matchFeatures.ts';
import { refineHomography } from './refineHomography.ts';

/** How one picture lies over another. */
export interface Alignment {
  /** Takes points of the second picture to those of the first, in pixels of both as they were given. */
  readonly homography: Homography;
  /** Corners told apart in both pictures that lie within three pixels of one another at 640 pixels' width. */
  readonly inliers: number;
  /** Share of what both pictures show that agrees, 0 to 1. */
  readonly confidence: number;
}

/** The corners of one board in both pictures, in turn, where they are known. */
export interface BoardCorners {
  readonly first: Four;
  readonly second: Four;
}

/** The least share of fields that agree, and their least number, for pictures of the same thing. */
const leastShare = 0.35;
const leastFields = 14;

/**
 * Lays the second picture over the first, or says null: they show different things. Views are proposed by corners that
 * look alike, by shifts of the small pictures and by the corners of a board where these are known; each is refined on
 * luma without its light, and the one under which most of the picture agrees is kept. One plane is aligned, the one
 * that shows most; where a board was moved on a bench, that is the board when it fills the picture better.
 */
export function alignPictures(first: Picture, second: Picture, boards?: BoardCorners): Alignment | null {
  return alignAlignables(alignableOf(first), alignableOf(second), boards);
}

/** The same for pictures that were made ready before. */
export function alignAlignables(first: Alignable, second: Alignable, boards?: BoardCorners): Alignment | null {
  const work = proposedViews(first, second, boards);
  const finest = first.levels.length - 1;
  const ranked = work.views
    .flatMap((view) => settled(first, second, view, 2) ?? [])
    .sort((a, b) => b.score - a.score)
    .slice(0, 2)
    .flatMap(({ view }) => settled(first, second, view, finest) ?? [])
    .sort((a, b) => b.score - a.score);
  const [best] = ranked;
  if (!best) return null;
  const { agreement, view } = best;
  const confidence = agreement.agreeing / Math.max(1, agreement.told);
  if (confidence < leastShare || agreement.agreeing < leastFields) return null;
  return {
    homography: resizeHomography(view, second.width / sizeOf(second), first.width / sizeOf(first)),
    inliers: work.pairs.filter((pair) => isNear(view, pair)).length,
    confidence,
  };
}

/** Views of the finest level to start from, rough ones among them. */
function proposedViews(first: Alignable, second: Alignable, boards: BoardCorners | undefined) {
  const pairs = matchFeatures(second.features, first.features);
  const canBe = (view: Homography) => keepsShape(view, sizeOf(second), heightOf(second));
  const views: Homography[] = [];
  let left = pairs;
  for (let time = 0; time < 2 && left.length >= 8; time++) {
    const found = robustHomography(left, { within: 4, canBe, tries: 800 });
    if (!found || found.inliers.length < 7) break;
    views.push(found.homography);
    const used = new Set(found.inliers);
    left = left.filter((_, i) => !used.has(i));
  }
  const [small, other] = [first.levels[0]?.even, second.levels[0]?.even];
  if (small && other) {
    for (const view of coarseViews(small, other, 4)) {
      const large = resizeHomography(view, sizeOf(second) / other.width, sizeOf(first) / small.width);
      const rough = roughly(first, second, large);
      if (rough) views.push(rough);
    }
  }
  if (boards) views.push(...boardViews(first, second, boards));
  if (views.length === 0) views.push(sameView);
  return { pairs, views };
}

/** A rough view after its first steps on the two coarsest levels. */
function roughly(first: Alignable, second: Alignable, start: Homography): Homography | null {
  return [0, 1].reduce<Homography | null>((view, level) => view && refinedAt(first, second, view, level), start);
}

/** The corners may begin anywhere, so all four turns are proposed. */
function boardViews(first: Alignable, second: Alignable, boards: BoardCorners): readonly Homography[] {
  return [0, 1, 2, 3].flatMap((turn) => {
    const [p, q, r, s] = boards.first.map((_, i) => boards.first[(i + turn) % 4]);
    const view = p && q && r && s ? homographyOfFour(boards.second, [p, q, r, s]) : null;
    return view ? [resizeHomography(view, sizeOf(second) / second.width, sizeOf(first) / first.width)] : [];
  });
}

/** A view refined up to a level, and how well it lays the pictures over one another there. */
function settled(first: Alignable, second: Alignable, start: Homography, level: number) {
  let view = start;
  for (let i = 2; i <= level; i++) view = refinedAt(first, second, view, i) ?? view;
  if (!keepsShape(view, sizeOf(second), heightOf(second))) return null;
  const judged = Math.min(level, first.levels.length - 2);
  const [one, other] = [first.levels[judged], second.levels[judged]];
  if (!one || !other) return null;
  const at = resizeHomography(view, other.even.width / sizeOf(second), one.even.width / sizeOf(first));
  const agreement = agreementOf(one, other, at);
  return { view, agreement, score: scoreOf(agreement) };
}

function refinedAt(first: Alignable, second: Alignable, view: Homography, level: number): Homography | null {
  const [one, other] = [first.levels[level], second.levels[level]];
  if (!one || !other) return null;
  const [from, to] = [other.even.width / sizeOf(second), one.even.width / sizeOf(first)];
  const refined = refineHomography(other.landmarks, one.even, resizeHomography(view, from, to));
  return refined && resizeHomography(refined, 1 / from, 1 / to);
}

/** What agrees, the middle of the picture counting twice as much as its corners. */
function scoreOf({ fields, columns, rows }: Agreement): number {
  let score = 0;
  for (let i = 0; i < fields.length; i++) {
    const correlation = fields[i] ?? Number.NaN;
    if (!(correlation > 0.3)) continue;
    const across = (2 * ((i % columns) + 0.5)) / columns - 1;
    const down = (2 * (Math.floor(i / columns) + 0.5)) / rows - 1;
    score += correlation * (1 - (across * across + down * down) / 4);
  }
  return score;
}

/** No mirror, no horizon in the picture, and areas at most six times larger or smaller, in each corner. */
function keepsShape(view: Homography, width: number, height: number): boolean {
  const determinant =
    view[0] * (view[4] * view[8] - view[5] * view[7]) -
    view[1] * (view[3] * view[8] - view[5] * view[6]) +
    view[2] * (view[3] * view[7] - view[4] * view[6]);
  return [0, width].every((column) =>
    [0, height].every((row) => {
      const depth = view[6] * column + view[7] * row + view[8];
      const area = determinant / depth ** 3;
      return depth > 0 && area > 1 / 6 && area < 6;
    }),
  );
}

function isNear(view: Homography, { from, to }: PointPair): boolean {
  const seen = applyHomography(view, from);
  return Math.hypot(seen.column - to.column, seen.row - to.row) < 3;
}

function sizeOf({ levels }: Alignable): number {
  return levels.at(-1)?.even.width ?? 1;
}

function heightOf({ levels }: Alignable): number {
  return levels.at(-1)?.even.height ?? 1;
}
