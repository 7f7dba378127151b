import { applyHomography } from './applyHomography.ts';
import type { Homography } from './homography.ts';
import { homographyOfFour } from './homographyOfFour.ts';
import { seededRandom } from './seededRandom.ts';
import { type PointPair, solveHomography } from './solveHomography.ts';

/** How pairs that are partly wrong are to be read. */
export interface RobustOptions {
  /** How far from its place a point may be seen and still count, in pixels; 3. */
  readonly within?: number;
  /** Four pairs are drawn at most so often; 1500. */
  readonly tries?: number;
  /** Says whether a view can be at all; views that cannot are passed over. */
  readonly canBe?: (homography: Homography) => boolean;
}

/** A view and which of the pairs, by their place in the list, agree with it. */
export interface RobustHomography {
  readonly homography: Homography;
  readonly inliers: readonly number[];
}

/**
 * The view that most pairs agree with, though many may be wrong: four pairs are drawn again and again from a stream with
 * a fixed seed, and the view with the least sum of squared distances, each cut at `within`, is solved anew from all that
 * agree (M. Fischler, R. Bolles, CACM 24(6), 1981; the cut sum after P. Torr, A. Zisserman, CVIU 78, 2000). Null where
 * no view has more than four. Truth: tests/truth/geometry.
 */
export function robustHomography(pairs: readonly PointPair[], options: RobustOptions = {}): RobustHomography | null {
  const { within = 3, tries = 1500, canBe = () => true } = options;
  const random = seededRandom(pairs.length);
  let best: Homography | null = null;
  let least = Number.POSITIVE_INFINITY;
  let needed = tries;
  for (let time = 0; time < needed && pairs.length >= 4; time++) {
    const four = drawFour(pairs, random);
    const view = four && homographyOfFour(toFour(four, 'from'), toFour(four, 'to'));
    if (!view || !canBe(view)) continue;
    const cost = costOf(view, pairs, within, least);
    if (cost >= least) continue;
    [best, least] = [view, cost];
    needed = Math.min(needed, triesFor(inliersOf(view, pairs, within).length / pairs.length, tries));
  }
  return best && settle(best, pairs, within, canBe);
}

/** Solves anew from those that agree until that makes no difference. */
function settle(
  start: Homography,
  pairs: readonly PointPair[],
  within: number,
  canBe: (homography: Homography) => boolean,
): RobustHomography | null {
  let homography = start;
  let inliers = inliersOf(homography, pairs, within);
  for (let time = 0; time < 5; time++) {
    const solved = solveHomography(inliers.flatMap((i) => pairs[i] ?? []));
    if (!solved || !canBe(solved)) break;
    const agreeing = inliersOf(solved, pairs, within);
    if (agreeing.length < inliers.length) break;
    const settled = agreeing.length === inliers.length && agreeing.every((pair, i) => pair === inliers[i]);
    homography = solved;
    inliers = agreeing;
    if (settled) break;
  }
  return inliers.length > 4 ? { homography, inliers } : null;
}

function drawFour(pairs: readonly PointPair[], random: () => number): readonly PointPair[] | null {
  const drawn = new Set<number>();
  while (drawn.size < 4) drawn.add(Math.floor(random() * pairs.length));
  const four = [...drawn].flatMap((i) => pairs[i] ?? []);
  return keepsTurns(four) ? four : null;
}

/** A camera in front of a plane sees each three of its points turn the same way (Hartley & Zisserman, exercise 4.9). */
function keepsTurns(four: readonly PointPair[]): boolean {
  for (let skip = 0; skip < 4; skip++) {
    const [p, q, r] = four.filter((_, i) => i !== skip);
    if (!p || !q || !r || turnOf(p.from, q.from, r.from) * turnOf(p.to, q.to, r.to) <= 0) return false;
  }
  return true;
}

function turnOf(p: PointPair['from'], q: PointPair['from'], r: PointPair['from']): number {
  return (q.column - p.column) * (r.row - p.row) - (r.column - p.column) * (q.row - p.row);
}

function toFour(pairs: readonly PointPair[], side: 'from' | 'to'): Parameters<typeof homographyOfFour>[0] {
  const [p, q, r, s] = pairs.map((pair) => pair[side]);
  const none = { column: 0, row: 0 };
  return [p ?? none, q ?? none, r ?? none, s ?? none];
}

function costOf(view: Homography, pairs: readonly PointPair[], within: number, enough: number): number {
  let sum = 0;
  for (const pair of pairs) {
    sum += Math.min(squaredMiss(view, pair), within * within);
    if (sum >= enough) return sum;
  }
  return sum;
}

function inliersOf(view: Homography, pairs: readonly PointPair[], within: number): readonly number[] {
  return pairs.flatMap((pair, i) => (squaredMiss(view, pair) <= within * within ? [i] : []));
}

function squaredMiss(view: Homography, { from, to }: PointPair): number {
  const seen = applyHomography(view, from);
  const miss = (seen.column - to.column) ** 2 + (seen.row - to.row) ** 2;
  return Number.isNaN(miss) ? Number.POSITIVE_INFINITY : miss;
}

/** Draws after which four right pairs came up with 99.5 % certainty. */
function triesFor(share: number, tries: number): number {
  const missed = Math.log(1 - Math.min(share, 0.999) ** 4);
  return missed < 0 ? Math.ceil(Math.log(0.005) / missed) : tries;
}
