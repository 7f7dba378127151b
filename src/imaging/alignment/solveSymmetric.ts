/**
 * x with M x = y for a symmetric positive M, of which only the upper half is read, by Cholesky's factors; null where M
 * is not positive.
 */
export function solveSymmetric(matrix: Float64Array, right: Float64Array): Float64Array | null {
  const n = right.length;
  const factor = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = matrix[j * n + i] ?? 0;
      for (let k = 0; k < j; k++) sum -= (factor[i * n + k] ?? 0) * (factor[j * n + k] ?? 0);
      if (i === j) {
        if (!(sum > 1e-12 * (matrix[j * n + j] ?? 0) && sum > 0)) return null;
        factor[j * n + j] = Math.sqrt(sum);
      } else factor[i * n + j] = sum / (factor[j * n + j] ?? 1);
    }
  }
  const x = Float64Array.from(right);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = (x[i] ?? 0) - (factor[i * n + k] ?? 0) * (x[k] ?? 0);
    x[i] = (x[i] ?? 0) / (factor[i * n + i] ?? 1);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = (x[i] ?? 0) - (factor[k * n + i] ?? 0) * (x[k] ?? 0);
    x[i] = (x[i] ?? 0) / (factor[i * n + i] ?? 1);
  }
  return x;
}
