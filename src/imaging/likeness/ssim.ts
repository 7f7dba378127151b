import { assert } from '#core/failure.ts';

/** Values row by row. */
interface Values {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

const radius = 5;
const weights = gaussian(1.5);

/**
 * Structural similarity of two planes of one size, −1 to 1, 1 for equal ones: the mean of
 * (2 m₁ m₂ + C₁)(2 s₁₂ + C₂) / ((m₁² + m₂² + C₁)(s₁² + s₂² + C₂)) with means, variances and covariance under a Gaussian
 * window of 11 × 11, sigma 1.5, C₁ = (0.01 L)², C₂ = (0.03 L)² (Z. Wang et al., IEEE TIP 13(4), 2004). `range` is L.
 * Windows that reach outside the planes or hold a NaN are left out; null where none is left. Truth:
 * tests/truth/geometry.
 */
export function ssim(first: Values, second: Values, range = 1): number | null {
  const { width, height } = first;
  assert(width === second.width && height === second.height, 'planes of one size');
  const smooth = (of: (at: number) => number) => smoothed(width, height, of);
  const a = first.values;
  const b = second.values;
  const meanA = smooth((at) => a[at] ?? 0);
  const meanB = smooth((at) => b[at] ?? 0);
  const squareA = smooth((at) => (a[at] ?? 0) ** 2);
  const squareB = smooth((at) => (b[at] ?? 0) ** 2);
  const product = smooth((at) => (a[at] ?? 0) * (b[at] ?? 0));
  const c1 = (0.01 * range) ** 2;
  const c2 = (0.03 * range) ** 2;
  let sum = 0;
  let count = 0;
  for (let i = 0; i < meanA.length; i++) {
    const [m, n] = [meanA[i] ?? 0, meanB[i] ?? 0];
    const varianceA = (squareA[i] ?? 0) - m * m;
    const varianceB = (squareB[i] ?? 0) - n * n;
    const covariance = (product[i] ?? 0) - m * n;
    const value = ((2 * m * n + c1) * (2 * covariance + c2)) / ((m * m + n * n + c1) * (varianceA + varianceB + c2));
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count === 0 ? null : sum / count;
}

/** Weighted means in windows that lie wholly inside, row by row. */
function smoothed(width: number, height: number, of: (at: number) => number): Float64Array {
  const newWidth = Math.max(0, width - 2 * radius);
  const newHeight = Math.max(0, height - 2 * radius);
  const across = new Float64Array(newWidth * height);
  const line = new Float64Array(width);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) line[column] = of(row * width + column);
    for (let column = 0; column < newWidth; column++) {
      let sum = 0;
      for (let k = 0; k <= 2 * radius; k++) sum += (weights[k] ?? 0) * (line[column + k] ?? 0);
      across[row * newWidth + column] = sum;
    }
  }
  const means = new Float64Array(newWidth * newHeight);
  for (let row = 0; row < newHeight; row++) {
    for (let k = 0; k <= 2 * radius; k++) {
      const start = (row + k) * newWidth;
      for (let column = 0; column < newWidth; column++) {
        const at = row * newWidth + column;
        means[at] = (means[at] ?? 0) + (weights[k] ?? 0) * (across[start + column] ?? 0);
      }
    }
  }
  return means;
}

function gaussian(sigma: number): Float64Array {
  const values = Float64Array.from({ length: 2 * radius + 1 }, (_, i) =>
    Math.exp(-((i - radius) ** 2) / (2 * sigma ** 2)),
  );
  const sum = values.reduce((total, value) => total + value, 0);
  return values.map((value) => value / sum);
}
