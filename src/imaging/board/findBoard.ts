import { areaWithin, convexHull, turnOf } from '../geometry/convexHull.ts';
import type { Four } from '../geometry/homographyOfFour.ts';
import type { ImagePoint } from '../geometry/points.ts';
import type { Picture } from '../pixels/picture.ts';
import { type Survey, surveyPicture } from '../pixels/surveyPicture.ts';
import { boardlikeRegions } from './boardlikeRegions.ts';
import type { Region } from './regionsOf.ts';
import { type Settled, settleSides } from './settleSides.ts';
import { surroundingFour } from './surroundingFour.ts';

/** A board's outline in a photo. */
export interface Board {
  /** Column and row as shares of the upright picture's width and height, clockwise from the top left. */
  readonly corners: readonly (readonly [number, number])[];
  /** Share of the outline that is seen, times how well four sides fit the region that they were taken from, 0 to 1. */
  readonly confidence: number;
}

/**
 * The outline of a board that is whole in view, or null. Regions of one colour, with what lies on them, are taken for
 * boards where four sides fit around them (boardlikeRegions, surroundingFour); the sides are then moved to where the
 * board's colour is seen to end (settleSides). What has no four straight and plainly seen sides of one tint, or nothing on
 * it, is no board. Of several the one that is large and sure is answered. The bounds were set by
 * eye on 120 drawn scenes and the demo's photos; bench/subject.mjs reports on scenes drawn from other seeds, and on the
 * demo's photos, which therefore flatter it.
 */
export function findBoard(picture: Picture): Board | null {
  const survey = surveyPicture(picture, surveyed);
  const scale = picture.width / survey.width;
  let best: { readonly corners: Four; readonly confidence: number; readonly rank: number } | null = null;
  for (const { corners, fill } of guessOutlines(survey)) {
    const settled = settle(picture, onPicture(corners, scale));
    if (settled === null || !hasBoardShape(settled.corners) || !settled.corners.every(isWithin(picture))) continue;
    const confidence = (fill * settled.seen.reduce((sum, share) => sum + share, 0)) / 4;
    const rank = confidence ** 2 * Math.sqrt(areaWithin(settled.corners));
    if (confidence < leastConfidence || Math.min(...settled.seen) < leastSeen || rank <= (best?.rank ?? 0)) continue;
    if (!isOneSurface(settled) || shareOfOther(survey, settled.corners, scale) < leastOther) continue;
    best = { corners: settled.corners, confidence, rank };
  }
  return (
    best && {
      corners: fromTopLeft(best.corners).map(
        ({ column, row }) => [(column + 0.5) / picture.width, (row + 0.5) / picture.height] as const,
      ),
      confidence: best.confidence,
    }
  );
}

/** Cells along the longer side in which boards are looked for. */
const surveyed = 160;
const leastConfidence = 0.88;
/** Of each side, how much must be seen at least. */
const leastSeen = 0.5;
/** Of the board, how much must be of another colour than most of it: parts, pads, print. */
const leastOther = 0.1;
/** Of the four sides' outline, how much the region's own convex outline must fill. */
const leastFill = 0.9;
/** Outlines nearer to each other than this, in shares of the picture's width, settle to the same. */
const alike = 0.012;
const mostGuesses = 10;
/** How far around a side it is looked for, in shares of the board's size, time after time. */
const reaches = [0.05, 0.025, 0.012];

interface Guess {
  readonly corners: Four;
  readonly fill: number;
}

function guessOutlines(survey: Survey): readonly Guess[] {
  const guesses: Guess[] = [];
  for (const region of boardlikeRegions(survey)) {
    const outline = convexHull(cornersOfCells(region));
    const corners = surroundingFour(outline);
    if (corners === null || !hasBoardShape(corners)) continue;
    const fill = areaWithin(outline) / areaWithin(corners);
    if (fill < leastFill || guesses.some((other) => isNear(other.corners, corners, alike * survey.width))) continue;
    guesses.push({ corners, fill });
  }
  const rankOf = ({ corners, fill }: Guess) => fill * Math.sqrt(areaWithin(corners));
  return guesses.sort((one, other) => rankOf(other) - rankOf(one)).slice(0, mostGuesses);
}

function cornersOfCells({ spans }: Region): ImagePoint[] {
  return spans.flatMap(({ row, first, last }) =>
    [row, row + 1].flatMap((edge) => [first, last + 1].map((column) => ({ column, row: edge }))),
  );
}

/** From edges of cells to centres of pixels. */
function onPicture(corners: Four, scale: number): Four {
  const [first, second, third, fourth] = corners;
  const move = ({ column, row }: ImagePoint) => ({ column: column * scale - 0.5, row: row * scale - 0.5 });
  return [move(first), move(second), move(third), move(fourth)];
}

function settle(picture: Picture, guess: Four): Settled | null {
  const size = Math.sqrt(areaWithin(guess));
  let settled: Settled | null = null;
  for (const reach of reaches) {
    settled = settleSides(picture, settled?.corners ?? guess, Math.max(4, reach * size));
    if (settled === null) return null;
  }
  return settled;
}

function isWithin({ width, height }: Picture): (corner: ImagePoint) => boolean {
  return ({ column, row }) => column >= -0.5 && row >= -0.5 && column <= width - 0.5 && row <= height - 0.5;
}

/** Convex, no corner sharper than about 27°, no side more than 2.2 times the one opposite or 6 times the next. */
function hasBoardShape(corners: Four): boolean {
  return corners.every((at, index) => {
    const [after, opposite, before] = [1, 2, 3].map((n) => corners[(index + n) % 4] ?? at);
    if (after === undefined || opposite === undefined || before === undefined) return false;
    const [side, next] = [distance(before, at), distance(at, after)];
    const ratios = [side / distance(after, opposite), side / next];
    const isAtMost = (ratio: number | undefined, most: number) =>
      ratio !== undefined && ratio <= most && ratio >= 1 / most;
    return turnOf(before, at, after) > 0.45 * side * next && isAtMost(ratios[0], 2.2) && isAtMost(ratios[1], 6);
  });
}

function isOneSurface({ colours }: Settled): boolean {
  return colours.every((one) => colours.every((other) => isSameTint(one, other)));
}

/**
 * Whether two colours can be one surface under more or less light, haze or shade: that changes lightness and chroma, but
 * hardly hue. A shadow's grey is no board's green. In units of CIELAB.
 */
function isSameTint(one: { a: number; b: number }, other: { a: number; b: number }): boolean {
  const chromas = [Math.hypot(one.a, one.b), Math.hypot(other.a, other.b)];
  const [weak, strong] = [Math.min(...chromas), Math.max(...chromas)];
  if (strong < 12) return strong - weak <= 10;
  const astray = Math.abs(one.a * other.b - one.b * other.a) / strong;
  return one.a * other.a + one.b * other.b >= 0 && astray <= 8 && weak >= 0.3 * strong;
}

/** Of the cells within, without a narrow margin, the share that differs from their median colour by more than 8. */
function shareOfOther(survey: Survey, corners: Four, scale: number): number {
  const middle = { column: meanOf(corners.map(({ column }) => column)), row: meanOf(corners.map(({ row }) => row)) };
  const inner = corners.map(({ column, row }) => ({
    column: (middle.column + 0.9 * (column - middle.column)) / scale,
    row: (middle.row + 0.9 * (row - middle.row)) / scale,
  }));
  const cells: number[] = [];
  for (let row = 0; row < survey.height; row++) {
    for (let column = 0; column < survey.width; column++) {
      const isInner = inner.every((from, index) => turnOf(from, inner[(index + 1) % 4] ?? from, { column, row }) > 0);
      if (isInner) cells.push(row * survey.width + column);
    }
  }
  const [l, a, b] = [survey.l, survey.a, survey.b].map((values) => medianOf(cells.map((cell) => values[cell] ?? 0)));
  const other = cells.filter(
    (cell) =>
      Math.hypot((survey.l[cell] ?? 0) - (l ?? 0), (survey.a[cell] ?? 0) - (a ?? 0), (survey.b[cell] ?? 0) - (b ?? 0)) >
      8,
  );
  return cells.length === 0 ? 0 : other.length / cells.length;
}

/** The same corners, beginning with the one of least column and row together. */
function fromTopLeft(corners: Four): readonly ImagePoint[] {
  const sums = corners.map(({ column, row }) => column + row);
  const first = sums.indexOf(Math.min(...sums));
  return [...corners.slice(first), ...corners.slice(0, first)];
}

function isNear(one: Four, other: Four, within: number): boolean {
  return one.every((corner, index) => distance(corner, other[index] ?? corner) < within);
}

function distance(one: ImagePoint, other: ImagePoint): number {
  return Math.hypot(one.column - other.column, one.row - other.row);
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function medianOf(values: readonly number[]): number {
  return Float32Array.from(values).sort()[values.length >> 1] ?? 0;
}
