import { boxMeans } from '../alignment/evenLight.ts';
import type { Channels } from './matchLight.ts';

/** How far off a place may be seen and still be the same, in pixels. */
const reach = 2;
/** Differences below this are no part, whatever the noise: share of full range. */
const least = 0.05;
/** Share of the local contrast that a place may differ by, since sharpness and places never fit wholly. */
const slack = 0.35;
/** Both grow by this share for each step of blur that one picture needed, since no two blurs are quite alike. */
const softer = 0.3;
/** A shadow leaves at least this much of the code of what it falls on. */
const shadow = 0.6;
/** How much of a change of light alone is forgiven within that. */
const forgiven = 0.6;

/** Two pictures held against one another, pixel by pixel. */
export interface Difference {
  /** Above 1 something changed. */
  readonly difference: Float32Array;
  /** Spread of the green within 7 × 7 pixels, in the rougher of the two pictures. */
  readonly contrast: Float32Array;
}

/**
 * How much two pictures differ at each pixel, against what need not mean anything: above 1 something changed. It is the
 * root of the mean squared difference of the three channels over 3 × 3 pixels, with the second picture shifted by up to
 * two pixels to where it fits best; the same from the second picture's pixels, and the larger of both, so that what is
 * only in one of them shows. A change of light that leaves the colour, as a shadow is, counts less. What need not mean
 * anything is the larger of 0.05 and the median plus six median deviations of the whole, and on top 0.35 of the spread of
 * the green within 7 × 7 pixels, in the smoother of the two pictures; three tenths more
 * for each step by which one of them had to be blurred.
 */
export function differenceOf(first: Channels, second: Channels, compared: Uint8Array, steps: number): Difference {
  const { width, height } = first;
  const count = width * height;
  const fromFirst = new Float32Array(count).fill(Number.POSITIVE_INFINITY);
  const fromSecond = new Float32Array(count).fill(Number.POSITIVE_INFINITY);
  const squares = new Float32Array(count);
  for (let down = -reach; down <= reach; down++) {
    for (let across = Math.abs(down) - reach; across <= reach - Math.abs(down); across++) {
      const shift = down * width + across;
      squaresOf(first, second, shift, compared, squares);
      const means = boxMeans(squares, width, height, 1);
      const start = Math.max(0, -shift);
      const end = count - Math.max(0, shift);
      for (let i = start; i < end; i++) {
        const mean = means[i] ?? 0;
        if (mean < (fromFirst[i] ?? 0)) fromFirst[i] = mean;
        if (mean < (fromSecond[i + shift] ?? 0)) fromSecond[i + shift] = mean;
      }
    }
  }
  const apart = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    if (compared[i] === 1) apart[i] = Math.sqrt(Math.max(fromFirst[i] ?? 0, fromSecond[i] ?? 0));
  }
  const limit = limitOf(apart, compared);
  const [one, two] = [spreadsOf(first), spreadsOf(second)];
  const contrast = one.map((spread, i) => Math.max(spread, two[i] ?? 0));
  const difference = apart.map(
    (value, i) => value / ((1 + softer * steps) * (limit + slack * Math.min(one[i] ?? 0, two[i] ?? 0))),
  );
  return { difference, contrast };
}

function squaresOf(first: Channels, second: Channels, shift: number, compared: Uint8Array, squares: Float32Array) {
  const [red, green, blue] = first.planes;
  const [otherRed, otherGreen, otherBlue] = second.planes;
  for (let i = 0; i < squares.length; i++) {
    if (compared[i] !== 1) {
      squares[i] = 0;
      continue;
    }
    const r = red[i] ?? 0;
    const g = green[i] ?? 0;
    const b = blue[i] ?? 0;
    const otherR = otherRed[i + shift] ?? 0;
    const otherG = otherGreen[i + shift] ?? 0;
    const otherB = otherBlue[i + shift] ?? 0;
    const light =
      (r * otherR + g * otherG + b * otherB + 0.01) / (otherR * otherR + otherG * otherG + otherB * otherB + 0.01);
    const gain = 1 + forgiven * (Math.min(1 / shadow, Math.max(shadow, light)) - 1);
    squares[i] = ((r - gain * otherR) ** 2 + (g - gain * otherG) ** 2 + (b - gain * otherB) ** 2) / 3;
  }
}

function spreadsOf({ width, height, planes: [, green] }: Channels): Float32Array {
  const means = boxMeans(green, width, height, 3);
  const squares = boxMeans(
    green.map((value) => value * value),
    width,
    height,
    3,
  );
  return squares.map((square, i) => Math.sqrt(Math.max(0, square - (means[i] ?? 0) ** 2)));
}

function limitOf(difference: Float32Array, compared: Uint8Array): number {
  const sample = difference.filter((_, i) => compared[i] === 1 && i % 3 === 0).sort();
  const median = sample[Math.floor(sample.length / 2)] ?? 0;
  const deviations = sample.map((value) => Math.abs(value - median)).sort();
  return Math.max(least, median + 6 * (deviations[Math.floor(deviations.length / 2)] ?? 0));
}
