import { composeHomographies } from '../geometry/composeHomographies.ts';
import type { Homography } from '../geometry/homography.ts';
import { invertHomography } from '../geometry/invertHomography.ts';
import type { Plane } from '../pixels/picture.ts';
import { solveSymmetric } from './solveSymmetric.ts';

/** Pixels of a plane at which a shift can be told, the two steepest of each field of 8 × 8. */
export interface Landmarks {
  readonly width: number;
  readonly height: number;
  readonly columns: Float32Array;
  readonly rows: Float32Array;
  readonly values: Float32Array;
  /** Change a pixel to the right and downwards. */
  readonly across: Float32Array;
  readonly down: Float32Array;
}

const field = 8;
const mostTimes = 25;

/** Landmarks of a plane, where `counts` says of a pixel that it does. */
export function landmarksOf(plane: Plane, counts: (column: number, row: number) => boolean = () => true): Landmarks {
  const { width, height, values } = plane;
  const chosen: number[] = [];
  for (let top = 2; top < height - 2; top += field) {
    for (let left = 2; left < width - 2; left += field) {
      let [first, second] = [-1, -1];
      let [most, next] = [0.02, 0.02];
      for (let row = top; row < Math.min(top + field, height - 2); row++) {
        for (let column = left; column < Math.min(left + field, width - 2); column++) {
          const at = row * width + column;
          const gx = (values[at + 1] ?? 0) - (values[at - 1] ?? 0);
          const gy = (values[at + width] ?? 0) - (values[at - width] ?? 0);
          const steep = gx * gx + gy * gy;
          if (steep > most) [next, second, most, first] = [most, first, steep, at];
          else if (steep > next) [next, second] = [steep, at];
        }
      }
      for (const at of [first, second]) if (at >= 0 && counts(at % width, Math.floor(at / width))) chosen.push(at);
    }
  }
  return {
    width,
    height,
    columns: Float32Array.from(chosen, (at) => at % width),
    rows: Float32Array.from(chosen, (at) => Math.floor(at / width)),
    values: Float32Array.from(chosen, (at) => values[at] ?? 0),
    across: Float32Array.from(chosen, (at) => ((values[at + 1] ?? 0) - (values[at - 1] ?? 0)) / 2),
    down: Float32Array.from(chosen, (at) => ((values[at + width] ?? 0) - (values[at - width] ?? 0)) / 2),
  };
}

/**
 * Moves a view until the landmarks fit best: inverse-compositional Gauss–Newton steps (S. Baker, I. Matthews, IJCV 56,
 * 2004) on planes of even light, with Tukey's weights, so that what was added or covered does not pull. `start` takes
 * the landmarks' plane to `input`. Null where fewer than 40 landmarks are in view or a step breaks down.
 */
export function refineHomography(landmarks: Landmarks, input: Plane, start: Homography): Homography | null {
  const count = landmarks.columns.length;
  const scale = Math.max(landmarks.width, landmarks.height) / 2;
  const toUnit: Homography = [
    1 / scale,
    0,
    -landmarks.width / 2 / scale,
    0,
    1 / scale,
    -landmarks.height / 2 / scale,
    0,
    0,
    1,
  ];
  const fromUnit: Homography = [scale, 0, landmarks.width / 2, 0, scale, landmarks.height / 2, 0, 0, 1];
  const steepest = steepestOf(landmarks, scale);
  const errors = new Float32Array(count);
  let view = start;
  for (let time = 0; time < mostTimes; time++) {
    const seen = missesOf(landmarks, input, view, errors);
    if (seen < 40) return null;
    const step = stepOf(steepest, errors, count);
    const back = step && invertHomography(step);
    if (!step || !back) return null;
    view = composeHomographies(view, composeHomographies(fromUnit, composeHomographies(back, toUnit)));
    const moved = Math.max(...step.map((value, i) => Math.abs(value - (i % 4 === 0 ? 1 : 0)))) * scale;
    if (!(moved < scale)) return null;
    if (moved < 0.01) break;
  }
  return view;
}

/** How the value at each landmark changes with each of the eight numbers of a small view, in units of half the side. */
function steepestOf({ width, height, columns, rows, across, down }: Landmarks, scale: number): Float32Array {
  const steepest = new Float32Array(8 * columns.length);
  for (let i = 0; i < columns.length; i++) {
    const u = ((columns[i] ?? 0) - width / 2) / scale;
    const v = ((rows[i] ?? 0) - height / 2) / scale;
    const gu = (across[i] ?? 0) * scale;
    const gv = (down[i] ?? 0) * scale;
    const turn = gu * u + gv * v;
    steepest.set([gu * u, gu * v, gu, gv * u, gv * v, gv, -u * turn, -v * turn], 8 * i);
  }
  return steepest;
}

/** Differences at the landmarks, NaN where the view leaves the picture; how many are in view. */
function missesOf(landmarks: Landmarks, input: Plane, view: Homography, errors: Float32Array): number {
  const { columns, rows, values } = landmarks;
  const { width, height } = input;
  let seen = 0;
  for (let i = 0; i < errors.length; i++) {
    const column = columns[i] ?? 0;
    const row = rows[i] ?? 0;
    const depth = view[6] * column + view[7] * row + view[8];
    const x = (view[0] * column + view[1] * row + view[2]) / depth;
    const y = (view[3] * column + view[4] * row + view[5]) / depth;
    if (!(depth > 0 && x >= 0 && y >= 0 && x < width - 1 && y < height - 1)) {
      errors[i] = Number.NaN;
      continue;
    }
    const left = Math.floor(x);
    const top = Math.floor(y);
    const at = top * width + left;
    const upper = (input.values[at] ?? 0) * (1 - x + left) + (input.values[at + 1] ?? 0) * (x - left);
    const lower = (input.values[at + width] ?? 0) * (1 - x + left) + (input.values[at + width + 1] ?? 0) * (x - left);
    errors[i] = upper * (1 - y + top) + lower * (y - top) - (values[i] ?? 0);
    seen++;
  }
  return seen;
}

function stepOf(steepest: Float32Array, errors: Float32Array, count: number): Homography | null {
  const sizes = errors
    .filter((error) => !Number.isNaN(error))
    .map(Math.abs)
    .sort();
  // Tukey's constant for 95 % efficiency times the spread that the median of the absolute errors tells.
  const cut = 4.685 * 1.4826 * Math.max(sizes[Math.floor(sizes.length / 2)] ?? 0, 0.02);
  const matrix = new Float64Array(64);
  const right = new Float64Array(8);
  for (let i = 0; i < count; i++) {
    const error = errors[i] ?? Number.NaN;
    if (!(Math.abs(error) < cut)) continue;
    const weight = (1 - (error / cut) ** 2) ** 2;
    for (let j = 0; j < 8; j++) {
      const weighted = weight * (steepest[8 * i + j] ?? 0);
      right[j] = (right[j] ?? 0) + weighted * error;
      for (let k = j; k < 8; k++) {
        matrix[8 * j + k] = (matrix[8 * j + k] ?? 0) + weighted * (steepest[8 * i + k] ?? 0);
      }
    }
  }
  const step = solveSymmetric(matrix, right);
  if (!step) return null;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = step;
  return [1 + a, b, c, d, 1 + e, f, g, h, 1];
}
