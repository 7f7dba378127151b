/** Light that strays in the lens: bright spots spill wide and faintly. */
export function addGlow({ width, height, data: pixels }, share) {
  const cell = Math.max(1, Math.round(width / 145));
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  let coarse = new Float32Array(columns * rows * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const c = (Math.floor(y / cell) * columns + Math.floor(x / cell)) * 3;
      for (let k = 0; k < 3; k++) coarse[c + k] += Math.max(0, pixels[(y * width + x) * 3 + k] - 0.25) / cell ** 2;
    }
  }
  for (let pass = 0; pass < 3; pass++) coarse = averageNearby(coarse, columns, rows, 5);
  const data = pixels.map((v, i) => {
    const x = (((i / 3) | 0) % width) / cell - 0.5;
    const y = ((i / 3 / width) | 0) / cell - 0.5;
    return v + share * between(coarse, columns, rows, x, y, i % 3);
  });
  return { width, height, data };
}

/** Mean over a square of 2 × reach + 1 cells. */
function averageNearby(grid, columns, rows, reach) {
  const across = new Float32Array(grid.length);
  const result = new Float32Array(grid.length);
  const size = 2 * reach + 1;
  for (let i = 0; i < grid.length; i++) {
    const row = Math.floor(i / 3 / columns);
    const column = Math.floor(i / 3) % columns;
    for (let d = -reach; d <= reach; d++) {
      if (column + d >= 0 && column + d < columns) across[i] += grid[(row * columns + column + d) * 3 + (i % 3)] / size;
    }
  }
  for (let i = 0; i < grid.length; i++) {
    const row = Math.floor(i / 3 / columns);
    for (let d = -reach; d <= reach; d++) {
      if (row + d >= 0 && row + d < rows) result[i] += across[i + d * columns * 3] / size;
    }
  }
  return result;
}

/** The grid's value between its cells. */
function between(grid, columns, rows, x, y, channel) {
  const x0 = Math.max(0, Math.min(columns - 2, Math.floor(x)));
  const y0 = Math.max(0, Math.min(rows - 2, Math.floor(y)));
  const fx = Math.max(0, Math.min(1, x - x0));
  const fy = Math.max(0, Math.min(1, y - y0));
  const at = (column, row) => grid[(row * columns + column) * 3 + channel];
  const top = at(x0, y0) * (1 - fx) + at(x0 + 1, y0) * fx;
  const bottom = at(x0, y0 + 1) * (1 - fx) + at(x0 + 1, y0 + 1) * fx;
  return top * (1 - fy) + bottom * fy;
}
