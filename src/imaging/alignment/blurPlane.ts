import type { Plane } from '../pixels/picture.ts';

/** A plane blurred by a Gaussian of so many pixels, cut at three times that; outside, the outermost pixels go on. */
export function blurPlane(plane: Plane, sigma: number): Plane {
  if (sigma <= 0) return plane;
  const { width, height, values, coding } = plane;
  const weights = gaussian(sigma);
  const across = new Float32Array(values.length);
  const blurred = new Float32Array(values.length);
  const radius = weights.length - 1;
  const padded = new Float32Array(width + 2 * radius);
  for (let row = 0; row < height; row++) {
    const line = row * width;
    for (let i = 0; i < padded.length; i++) {
      padded[i] = values[line + Math.min(width - 1, Math.max(0, i - radius))] ?? 0;
    }
    for (let column = 0; column < width; column++) {
      let sum = (weights[0] ?? 0) * (padded[column + radius] ?? 0);
      for (let k = 1; k <= radius; k++) {
        sum += (weights[k] ?? 0) * ((padded[column + radius - k] ?? 0) + (padded[column + radius + k] ?? 0));
      }
      across[line + column] = sum;
    }
  }
  for (let row = 0; row < height; row++) {
    const line = row * width;
    const middle = weights[0] ?? 0;
    for (let column = 0; column < width; column++) blurred[line + column] = middle * (across[line + column] ?? 0);
    for (let k = 1; k <= radius; k++) {
      const above = Math.max(0, row - k) * width;
      const below = Math.min(height - 1, row + k) * width;
      const weight = weights[k] ?? 0;
      for (let column = 0; column < width; column++) {
        const pair = (across[above + column] ?? 0) + (across[below + column] ?? 0);
        blurred[line + column] = (blurred[line + column] ?? 0) + weight * pair;
      }
    }
  }
  return { width, height, values: blurred, coding };
}

/** Weights from the middle outwards; both halves sum up to 1. */
function gaussian(sigma: number): Float64Array {
  const radius = Math.ceil(3 * sigma);
  const weights = Float64Array.from({ length: radius + 1 }, (_, k) => Math.exp((-k * k) / (2 * sigma * sigma)));
  const sum = weights.reduce((total, weight, k) => total + (k === 0 ? weight : 2 * weight), 0);
  return weights.map((weight) => weight / sum);
}
