import { colourMixture, surpriseAt } from '../colour/colourMixture.ts';
import { blurred } from '../pixels/blurred.ts';
import type { Survey } from '../pixels/surveyPicture.ts';
import { barrierDistance } from './barrierDistance.ts';
import { betweenPeaks } from './betweenPeaks.ts';

/** For each clue by name, its value in each cell. */
export type Clues = ReadonlyMap<string, Float32Array>;

/**
 * What in a picture speaks for a cell belonging to its subject. Lengths are shares of the longer side.
 *
 * - `barrier…`: contrast on the best way to the border (see barrierDistance), colour counting half more than lightness.
 * - `ground…`: surprise at the cell's colour, by the colours along the border.
 * - `middle…`: how much less surprising the colour is by the colours in the middle of the picture than along the border.
 * - `detail…`: logarithm of the mean step from pixel to pixel; `step`: of that from cell to cell; `sharp`: the one less the
 *   other, high where the picture is in focus.
 * - `…Wide` and `…Far`: smoothed by 0.03 and by 0.08 (detail by 0.04).
 * - `…Across` and `…Down`: whether something at least as strong lies on both sides of the column, of the row.
 * - `light`, `chroma`, `aside`, `apart`, `lower`: lightness; colourfulness; distance from the middle column, from the
 *   middle row, and below that, in shares of width and height.
 * - `border…`, `mean…`: of the whole picture, how much detail and surprise its border has, and its mean.
 */
export function cluesOf(survey: Survey): Clues {
  const { width, height } = survey;
  const side = Math.max(width, height);
  const smooth = (share: number, values: Float32Array) => blurred(values, width, height, share * side);
  const [l, a, b] = [smooth(0.006, survey.l), smooth(0.006, survey.a), smooth(0.006, survey.b)];
  const barriers = [l, a, b].map((values) => barrierDistance(values, width, height));
  const barrier = addUp(barriers, [1, 1.5, 1.5]);
  const border = cellsWhere(width, height, (column, row) => {
    return Math.min(column, row, width - 1 - column, height - 1 - row) < 0.04 * side;
  });
  const middle = cellsWhere(width, height, (column, row) => {
    return Math.abs((column + 0.5) / width - 0.5) < 0.22 && Math.abs((row + 0.5) / height - 0.5) < 0.22;
  });
  const byBorder = colourMixture(survey, border, 4);
  const byMiddle = colourMixture(survey, middle.length > 0 ? middle : border, 5);
  const ground = l.map((light, cell) => surpriseAt(byBorder, light, a[cell] ?? 0, b[cell] ?? 0));
  const liking = l.map((light, cell) => (ground[cell] ?? 0) - surpriseAt(byMiddle, light, a[cell] ?? 0, b[cell] ?? 0));
  const detail = smooth(0.04, survey.detail).map((value) => Math.log(value + 0.003));
  const step = smooth(0.04, stepsBetween(survey)).map((value) => Math.log(value + 0.5));
  const place = (valueAt: (u: number, v: number) => number) =>
    l.map((_, cell) => valueAt(((cell % width) + 0.5) / width - 0.5, (Math.floor(cell / width) + 0.5) / height - 0.5));
  const everywhere = (value: number) => new Float32Array(width * height).fill(value);
  const clues = new Map<string, Float32Array>();
  const wide = {
    barrier: smooth(0.03, barrier),
    ground: smooth(0.03, ground),
    middle: smooth(0.03, liking),
    detail,
  };
  for (const [name, values] of Object.entries(wide)) {
    const { across, down } = betweenPeaks(values, width, height);
    clues.set(`${name}Wide`, values).set(`${name}Across`, across).set(`${name}Down`, down);
  }
  return clues
    .set('barrierFar', smooth(0.08, barrier))
    .set('groundFar', smooth(0.08, ground))
    .set('step', step)
    .set(
      'sharp',
      detail.map((value, cell) => value - (step[cell] ?? 0)),
    )
    .set('light', l)
    .set(
      'chroma',
      smooth(
        0.02,
        a.map((value, cell) => Math.hypot(value, b[cell] ?? 0)),
      ),
    )
    .set(
      'aside',
      place((u) => Math.abs(u)),
    )
    .set(
      'apart',
      place((_, v) => Math.abs(v)),
    )
    .set(
      'lower',
      place((_, v) => v),
    )
    .set('borderDetail', everywhere(meanOf(detail, border) - meanOf(detail)))
    .set('borderGround', everywhere(meanOf(ground, border)))
    .set('meanGround', everywhere(meanOf(ground)))
    .set('meanBarrier', everywhere(meanOf(barrier)));
}

function cellsWhere(width: number, height: number, holds: (column: number, row: number) => boolean): Uint32Array {
  const cells: number[] = [];
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      if (holds(column, row)) cells.push(row * width + column);
    }
  }
  return Uint32Array.from(cells);
}

function stepsBetween({ width, height, l, a, b }: Survey): Float32Array {
  return l.map((_, cell) => {
    const right = cell % width < width - 1 ? cell + 1 : cell;
    const below = cell < width * (height - 1) ? cell + width : cell;
    let sum = 0;
    for (const values of [l, a, b]) {
      const here = values[cell] ?? 0;
      sum += Math.abs(here - (values[right] ?? 0)) + Math.abs(here - (values[below] ?? 0));
    }
    return sum;
  });
}

function addUp(parts: readonly Float32Array[], weights: readonly number[]): Float32Array {
  const sum = new Float32Array(parts[0]?.length ?? 0);
  parts.forEach((part, index) => {
    for (let cell = 0; cell < sum.length; cell++)
      sum[cell] = (sum[cell] ?? 0) + (weights[index] ?? 0) * (part[cell] ?? 0);
  });
  return sum;
}

function meanOf(values: Float32Array, cells?: Uint32Array): number {
  if (cells === undefined) return values.reduce((sum, value) => sum + value, 0) / values.length;
  return cells.reduce((sum, cell) => sum + (values[cell] ?? 0), 0) / cells.length;
}
