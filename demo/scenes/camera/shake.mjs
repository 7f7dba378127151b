/**
 * The picture smeared by a hand that moved while the shutter was open: `length` in pixels along `angle` degrees
 * (0 to the right, 90 upwards), on a slight bow as a wrist moves.
 */
export function shake({ width, height, data: source }, length, angle) {
  const steps = Math.max(2, Math.ceil(length) + 1);
  const [c, s] = [Math.cos((angle * Math.PI) / 180), -Math.sin((angle * Math.PI) / 180)];
  const path = Array.from({ length: steps }, (_, n) => {
    const t = n / (steps - 1) - 0.5;
    const bow = (0.25 - t * t) * 0.3 - 0.05;
    return [(c * t - s * bow) * length, (s * t + c * bow) * length];
  });
  const data = new Float32Array(source.length);
  for (const [dx, dy] of path) {
    const [x0, y0] = [Math.floor(dx), Math.floor(dy)];
    const [fx, fy] = [dx - x0, dy - y0];
    for (let y = 0; y < height; y++) {
      const top = clamp(y + y0, height) * width;
      const low = clamp(y + y0 + 1, height) * width;
      for (let x = 0; x < width; x++) {
        const left = clamp(x + x0, width);
        const right = clamp(x + x0 + 1, width);
        for (let k = 0; k < 3; k++) {
          const above = source[(top + left) * 3 + k] * (1 - fx) + source[(top + right) * 3 + k] * fx;
          const below = source[(low + left) * 3 + k] * (1 - fx) + source[(low + right) * 3 + k] * fx;
          data[(y * width + x) * 3 + k] += (above * (1 - fy) + below * fy) / steps;
        }
      }
    }
  }
  return { width, height, data };
}

function clamp(n, size) {
  return n < 0 ? 0 : n >= size ? size - 1 : n;
}
