/**
 * The unit vector v for which v' M v is least, M symmetric of size n, row by row, by cyclic Jacobi rotations (G. Golub,
 * C. Van Loan, "Matrix Computations", section 8.5), and how the two least eigenvalues compare with the largest.
 */
export function smallestEigenvector(matrix: Float64Array, n: number): { vector: Float64Array; gap: number } {
  const m = Float64Array.from(matrix);
  const vectors = new Float64Array(n * n);
  for (let i = 0; i < n; i++) vectors[i * n + i] = 1;
  for (let sweep = 0; sweep < 60 && offDiagonal(m, n) > 1e-30 * squares(m); sweep++) {
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) rotate(m, vectors, n, p, q);
    }
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => at(m, i * n + i) - at(m, j * n + j));
  const [least = 0, next = 0] = order;
  const largest = order.at(-1) ?? 0;
  return {
    vector: Float64Array.from({ length: n }, (_, i) => at(vectors, i * n + least)),
    gap: at(m, next * n + next) / at(m, largest * n + largest),
  };
}

function rotate(m: Float64Array, vectors: Float64Array, n: number, p: number, q: number): void {
  const off = at(m, p * n + q);
  if (off === 0) return;
  const theta = (at(m, q * n + q) - at(m, p * n + p)) / (2 * off);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < n; k++) turn(m, k * n + p, k * n + q, c, s);
  for (let k = 0; k < n; k++) turn(m, p * n + k, q * n + k, c, s);
  for (let k = 0; k < n; k++) turn(vectors, k * n + p, k * n + q, c, s);
}

function turn(values: Float64Array, i: number, j: number, c: number, s: number): void {
  const a = at(values, i);
  const b = at(values, j);
  values[i] = c * a - s * b;
  values[j] = s * a + c * b;
}

function offDiagonal(m: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) if (i !== j) sum += at(m, i * n + j) ** 2;
  return sum;
}

function squares(m: Float64Array): number {
  return m.reduce((sum, value) => sum + value * value, 0);
}

function at(values: Float64Array, i: number): number {
  return values[i] ?? 0;
}
