import { applyHomography } from '../geometry/applyHomography.ts';
import { type Homography, sameView } from '../geometry/homography.ts';
import type { Plane } from '../pixels/picture.ts';

/** Turns that are tried, in degrees. */
const turns = [-8, 0, 8];

/**
 * The shifts, by whole pixels and with little turns, for which two small planes of even light correlate best: the
 * `count` best that lie apart. Each takes points of the second plane to those of the first. For pictures that are too
 * blurred, too dark or too regular for corners to be told apart.
 */
export function coarseViews(first: Plane, second: Plane, count: number): readonly Homography[] {
  const reachAcross = Math.floor(second.width / 3);
  const reachDown = Math.floor(second.height / 3);
  const found: { view: Homography; score: number }[] = [];
  for (const turn of turns) {
    const turned = turnedAbout(second, turn);
    const samples = samplesOf(second, turned);
    for (let down = -reachDown; down <= reachDown; down++) {
      for (let across = -reachAcross; across <= reachAcross; across++) {
        const score = correlation(first, samples, across, down);
        const [a, b, c, d, e, f] = turned;
        found.push({ score, view: [a, b, c + across, d, e, f + down, 0, 0, 1] });
      }
    }
  }
  found.sort((a, b) => b.score - a.score);
  const chosen: Homography[] = [];
  for (const { view } of found) {
    if (chosen.length >= count) break;
    if (chosen.every((other) => !isNear(view, other, second))) chosen.push(view);
  }
  return chosen;
}

function turnedAbout({ width, height }: Plane, degrees: number): Homography {
  if (degrees === 0) return sameView;
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const [x, y] = [(width - 1) / 2, (height - 1) / 2];
  return [cos, -sin, x - cos * x + sin * y, sin, cos, y - sin * x - cos * y, 0, 0, 1];
}

/** Every other pixel: where it comes to lie when turned, and its value. */
function samplesOf({ width, height, values }: Plane, view: Homography): Float32Array {
  const samples: number[] = [];
  for (let row = 0; row < height; row += 2) {
    for (let column = row % 4 === 0 ? 0 : 1; column < width; column += 2) {
      const seen = applyHomography(view, { column, row });
      samples.push(Math.round(seen.column), Math.round(seen.row), values[row * width + column] ?? 0);
    }
  }
  return Float32Array.from(samples);
}

function correlation({ width, height, values }: Plane, samples: Float32Array, across: number, down: number): number {
  let product = 0;
  let squares = 0;
  let others = 0;
  let count = 0;
  for (let i = 0; i < samples.length; i += 3) {
    const column = (samples[i] ?? 0) + across;
    const row = (samples[i + 1] ?? 0) + down;
    if (column < 0 || row < 0 || column >= width || row >= height) continue;
    const value = values[row * width + column] ?? 0;
    const other = samples[i + 2] ?? 0;
    product += value * other;
    squares += value * value;
    others += other * other;
    count++;
  }
  // A shift that leaves little in view has an easy time: it is held to what it leaves.
  const share = (3 * count) / samples.length;
  return share < 0.35 ? -1 : (product / Math.sqrt(squares * others + 1e-9)) * Math.sqrt(share);
}

function isNear(view: Homography, other: Homography, { width, height }: Plane): boolean {
  return [
    { column: 0, row: 0 },
    { column: width, row: height },
  ].every((corner) => {
    const [p, q] = [applyHomography(view, corner), applyHomography(other, corner)];
    return Math.hypot(p.column - q.column, p.row - q.row) < 0.06 * width;
  });
}
