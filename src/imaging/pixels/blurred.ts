/**
 * Smoothed by three running means, which together come close to a Gaussian of deviation `sigma` cells (W. Wells, IEEE
 * PAMI 8(2), 1986). Cells beyond the edge count as the nearest cell within.
 */
export function blurred(values: Float32Array, width: number, height: number, sigma: number): Float32Array {
  const radius = Math.round((Math.sqrt(4 * sigma * sigma + 1) - 1) / 2);
  if (radius < 1) return values.slice();
  let now = values;
  for (let round = 0; round < 3; round++) {
    const across = new Float32Array(values.length);
    for (let row = 0; row < height; row++) runningMean(now, across, row * width, 1, width, radius);
    const down = new Float32Array(values.length);
    for (let column = 0; column < width; column++) runningMean(across, down, column, width, height, radius);
    now = down;
  }
  return now;
}

function runningMean(
  from: Float32Array,
  to: Float32Array,
  start: number,
  step: number,
  count: number,
  radius: number,
): void {
  const valueAt = (index: number) => from[start + Math.min(count - 1, Math.max(0, index)) * step] ?? 0;
  let sum = 0;
  for (let index = -radius; index <= radius; index++) sum += valueAt(index);
  for (let index = 0; index < count; index++) {
    to[start + index * step] = sum / (2 * radius + 1);
    sum += valueAt(index + radius + 1) - valueAt(index - radius);
  }
}
