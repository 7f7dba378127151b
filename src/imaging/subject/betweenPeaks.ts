/**
 * For each cell, the highest that is reached both left of it and right of it, and both above and below, its own column
 * and row included: the weaker of the two maxima. In deviations from the mean of all cells, so that pictures compare.
 * What lies between two strong places belongs to the box around them, however weak it is itself.
 */
export function betweenPeaks(
  values: Float32Array,
  width: number,
  height: number,
): { readonly across: Float32Array; readonly down: Float32Array } {
  const columns = new Float32Array(width).fill(Number.NEGATIVE_INFINITY);
  const rows = new Float32Array(height).fill(Number.NEGATIVE_INFINITY);
  let [sum, squares] = [0, 0];
  for (let row = 0, cell = 0; row < height; row++) {
    for (let column = 0; column < width; column++, cell++) {
      const value = values[cell] ?? 0;
      columns[column] = Math.max(columns[column] ?? 0, value);
      rows[row] = Math.max(rows[row] ?? 0, value);
      sum += value;
      squares += value * value;
    }
  }
  const mean = sum / values.length;
  const deviation = Math.sqrt(Math.max(0, squares / values.length - mean * mean)) + 1e-6;
  const [byColumn, byRow] = [weakerOfSides(columns), weakerOfSides(rows)].map((line) =>
    line.map((value) => (value - mean) / deviation),
  );
  return {
    across: values.map((_, cell) => byColumn?.[cell % width] ?? 0),
    down: values.map((_, cell) => byRow?.[Math.floor(cell / width)] ?? 0),
  };
}

/** At each place of a line, the highest before it or the highest after it, whichever is lower; its own value counts for both. */
export function weakerOfSides(line: Float32Array): Float32Array {
  const before = line.slice();
  const after = line.slice();
  for (let index = 1; index < line.length; index++) {
    before[index] = Math.max(before[index - 1] ?? 0, before[index] ?? 0);
    const back = line.length - 1 - index;
    after[back] = Math.max(after[back + 1] ?? 0, after[back] ?? 0);
  }
  return before.map((value, index) => Math.min(value, after[index] ?? 0));
}
