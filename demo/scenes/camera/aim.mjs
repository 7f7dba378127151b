import { through } from '../sceneCamera.mjs';

/** A picture seen through a homography (from its own pixels to those of the source), by Catmull-Rom. */
export function aimLight(source, matrix, width, height) {
  const data = new Float32Array(width * height * 3);
  forEachPixel(matrix, width, height, (i, x, y) => {
    const x0 = Math.floor(x);
    const y0 = Math.floor(y);
    const across = weights(x - x0);
    const down = weights(y - y0);
    for (let k = 0; k < 3; k++) {
      let sum = 0;
      for (let dy = 0; dy < 4; dy++) {
        const row = within(y0 + dy - 1, source.height) * source.width;
        let line = 0;
        for (let dx = 0; dx < 4; dx++) {
          line += across[dx] * source.data[(row + within(x0 + dx - 1, source.width)) * 3 + k];
        }
        sum += down[dy] * line;
      }
      data[i * 3 + k] = Math.max(0, sum);
    }
  });
  return { width, height, data };
}

/** Distances seen through a homography: the nearest pixel, for a mean of near and far is neither. */
export function aimDistance(source, matrix, width, height) {
  const data = new Float32Array(width * height);
  forEachPixel(matrix, width, height, (i, x, y) => {
    data[i] = source.data[within(Math.round(y), source.height) * source.width + within(Math.round(x), source.width)];
  });
  return { width, height, data };
}

function forEachPixel(matrix, width, height, visit) {
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [sx, sy] = through(matrix, x + 0.5, y + 0.5);
      // Hand-made homographies are exact; what differs from a whole pixel by less is rounding.
      visit(y * width + x, settle(sx - 0.5), settle(sy - 0.5));
    }
  }
}

function settle(v) {
  return Math.abs(v - Math.round(v)) < 1e-6 ? Math.round(v) : v;
}

function within(n, size) {
  return n < 0 ? 0 : n >= size ? size - 1 : n;
}

function weights(t) {
  return [
    -0.5 * t + t * t - 0.5 * t ** 3,
    1 - 2.5 * t * t + 1.5 * t ** 3,
    0.5 * t + 2 * t * t - 1.5 * t ** 3,
    -0.5 * t * t + 0.5 * t ** 3,
  ];
}
