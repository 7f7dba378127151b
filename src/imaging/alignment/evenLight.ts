import type { Plane } from '../pixels/picture.ts';

/** Spread below which a neighbourhood counts as smooth, of the full range 1. */
const smooth = 0.02;

/**
 * A plane without its light: (v − m) / √(s² + 0.02²), with mean m and spread s over the square of `radius` pixels round
 * each pixel. A lamp moved, a shadow, exposure and contrast then make little difference.
 */
export function evenLight({ width, height, values, coding }: Plane, radius: number): Plane {
  const means = boxMeans(values, width, height, radius);
  const squares = boxMeans(
    values.map((value) => value * value),
    width,
    height,
    radius,
  );
  const even = new Float32Array(values.length);
  for (let i = 0; i < even.length; i++) {
    const mean = means[i] ?? 0;
    const variance = Math.max(0, (squares[i] ?? 0) - mean * mean);
    even[i] = ((values[i] ?? 0) - mean) / Math.sqrt(variance + smooth * smooth);
  }
  return { width, height, values: even, coding };
}

/** Mean over the square of `radius` pixels round each pixel, as much of it as lies inside. */
export function boxMeans(values: Float32Array, width: number, height: number, radius: number): Float32Array {
  const across = new Float32Array(values.length);
  for (let row = 0; row < height; row++) slide(values, across, row * width, 1, width, radius);
  const means = new Float32Array(values.length);
  // Down all columns at once: rows lie together in memory.
  const sums = new Float64Array(width);
  let count = 0;
  for (let row = -radius; row < height; row++) {
    const enters = row + radius;
    const leaves = row - radius - 1;
    if (enters < height) {
      count++;
      for (let column = 0; column < width; column++) {
        sums[column] = (sums[column] ?? 0) + (across[enters * width + column] ?? 0);
      }
    }
    if (leaves >= 0) {
      count--;
      for (let column = 0; column < width; column++) {
        sums[column] = (sums[column] ?? 0) - (across[leaves * width + column] ?? 0);
      }
    }
    if (row < 0) continue;
    for (let column = 0; column < width; column++) means[row * width + column] = (sums[column] ?? 0) / count;
  }
  return means;
}

function slide(from: Float32Array, to: Float32Array, start: number, step: number, length: number, radius: number) {
  let sum = 0;
  let count = 0;
  for (let i = -radius; i < length; i++) {
    const enters = i + radius;
    const leaves = i - radius - 1;
    if (enters < length) {
      sum += from[start + enters * step] ?? 0;
      count++;
    }
    if (leaves >= 0) {
      sum -= from[start + leaves * step] ?? 0;
      count--;
    }
    if (i >= 0) to[start + i * step] = sum / count;
  }
}
