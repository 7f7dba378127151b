import { colourMixture, surpriseAt } from '../colour/colourMixture.ts';
import { blurred } from '../pixels/blurred.ts';
import type { Survey } from '../pixels/surveyPicture.ts';
import { weakerOfSides } from './betweenPeaks.ts';
import type { Clues } from './cluesOf.ts';
import { likeliestBox } from './likeliestBox.ts';

/** A second look, once there is a first guess. */
export interface CloserLook {
  readonly clues: Clues;
  /** How much likelier the cell's colour is within the subject than outside, as a logarithm, −6 to 6. */
  readonly leaning: Float32Array;
}

/**
 * Clues that a first guess of each cell's chance makes possible, beside those of the first look.
 *
 * - `first`, `firstWide`: the guess, and smoothed by 0.05.
 * - `leaning…`: how the colours within the likeliest box differ from those around it, smoothed by 0.01 (`Near`), 0.03
 *   (`Wide`) and 0.08 (`Far`); `surround`: surprise at the colour by those around.
 * - `thing`, `thingWide`: chance by guess and colour together, smoothed by 0.012 and 0.04; `…Across`, `…Down`: as in
 *   cluesOf, of column and row shares.
 * - `insideAcross`, `insideDown`: how deep within the likeliest box, in shares of it, negative outside.
 * - `boxOverlap`, `boxWidth`, `boxHeight`: of that box.
 */
export function closerCluesOf(survey: Survey, first: Float32Array, before: Clues): CloserLook {
  const { width, height } = survey;
  const side = Math.max(width, height);
  const smooth = (share: number, values: Float32Array) => blurred(values, width, height, share * side);
  const { box, overlap } = likeliestBox(first, width, height);
  const [boxWidth, boxHeight] = [box.right - box.left, box.bottom - box.top];
  const depth = (cell: number) => {
    const [column, row] = [(cell % width) + 0.5, Math.floor(cell / width) + 0.5];
    return {
      across: Math.min(column - box.left, box.right - column),
      down: Math.min(row - box.top, box.bottom - row),
    };
  };
  const [inner, outer]: [number[], number[]] = [[], []];
  first.forEach((chance, cell) => {
    const { across, down } = depth(cell);
    const inside = Math.min(across, down);
    if (inside > 0 && chance > 0.5) inner.push(cell);
    if (inside < -0.04 * side || chance < 0.12) outer.push(cell);
  });
  const likeliest = first.reduce((best, chance, cell) => (chance > (first[best] ?? 0) ? cell : best), 0);
  const leastLikely = first.reduce((best, chance, cell) => (chance < (first[best] ?? 0) ? cell : best), 0);
  const within = colourMixture(survey, Uint32Array.from(inner.length > 0 ? inner : [likeliest]), 6);
  const around = colourMixture(survey, Uint32Array.from(outer.length > 0 ? outer : [leastLikely]), 6);
  const colourOf = (cell: number) => [survey.l[cell] ?? 0, survey.a[cell] ?? 0, survey.b[cell] ?? 0] as const;
  const surround = first.map((_, cell) => surpriseAt(around, ...colourOf(cell)));
  const leaning = surround.map((surprise, cell) =>
    Math.max(-6, Math.min(6, surprise - surpriseAt(within, ...colourOf(cell)))),
  );
  const thing = smooth(0.012, chancesByColour(first, leaning));
  const near = smooth(0.01, leaning);
  const everywhere = (value: number) => new Float32Array(width * height).fill(value);
  const clues = new Map(before);
  const shares = {
    thing,
    plainThing: thing.map((chance) => (chance > 0.5 ? 1 : 0)),
    leaning: near.map((value) => Math.max(0, value)),
  };
  for (const [name, values] of Object.entries(shares)) {
    const { across, down } = betweenShares(values, width, height);
    clues.set(`${name}Across`, across).set(`${name}Down`, down);
    clues.set(
      `${name}Both`,
      across.map((value, cell) => Math.min(value, down[cell] ?? 0)),
    );
  }
  clues
    .set('first', first)
    .set('firstWide', smooth(0.05, first))
    .set('surround', surround)
    .set('leaningNear', near)
    .set('leaningWide', smooth(0.03, leaning))
    .set('leaningFar', smooth(0.08, leaning))
    .set('thing', thing)
    .set('thingWide', smooth(0.04, thing))
    .set(
      'insideAcross',
      first.map((_, cell) => depth(cell).across / boxWidth),
    )
    .set(
      'insideDown',
      first.map((_, cell) => depth(cell).down / boxHeight),
    )
    .set('boxOverlap', everywhere(overlap))
    .set('boxWidth', everywhere(boxWidth / width))
    .set('boxHeight', everywhere(boxHeight / height));
  return { clues, leaning };
}

/** Chances after the colour was seen (Bayes' rule). */
export function chancesByColour(chances: Float32Array, leaning: Float32Array): Float32Array {
  return chances.map((chance, cell) => chance / (chance + (1 - chance) * Math.exp(-(leaning[cell] ?? 0)) || 1));
}

/** As betweenPeaks, of the sums of columns and of rows, in shares of the largest. */
function betweenShares(values: Float32Array, width: number, height: number) {
  const [columns, rows] = [new Float32Array(width), new Float32Array(height)];
  for (let row = 0, cell = 0; row < height; row++) {
    for (let column = 0; column < width; column++, cell++) {
      columns[column] = (columns[column] ?? 0) + (values[cell] ?? 0) / height;
      rows[row] = (rows[row] ?? 0) + (values[cell] ?? 0) / width;
    }
  }
  const [mostAcross, mostDown] = [columns, rows].map((line) =>
    line.reduce((most, value) => Math.max(most, value), 1e-6),
  );
  const [byColumn, byRow] = [weakerOfSides(columns), weakerOfSides(rows)];
  return {
    across: values.map((_, cell) => (byColumn[cell % width] ?? 0) / (mostAcross ?? 1)),
    down: values.map((_, cell) => (byRow[Math.floor(cell / width)] ?? 0) / (mostDown ?? 1)),
  };
}
