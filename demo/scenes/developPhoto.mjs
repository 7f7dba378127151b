import sharp from 'sharp';
import { randomStream } from './randomStream.mjs';

const goldenAngle = Math.PI * (3 - Math.sqrt(5));

/**
 * Turns traced light (linear, 16 bit) and distances into a JPEG as a small camera would give it: shallow focus,
 * a little glow, darker corners, grain, a soft shoulder. `shot.develop` holds exposure (factor), blur (radius in
 * thousandths of the width at twice the distance of focus), glow (share), grain (share), warmth (share). The picture
 * is enlarged to `size` before the grain falls on it.
 */
export async function developPhoto(light, depth, shot, size) {
  const { width, height, data } = await readLinear(light);
  const { exposure = 1, blur = 4, glow = 0.04, grain = 0.012, warmth = 0, quality = 84 } = shot.develop ?? {};
  const distances = await readLinear(depth);
  const focused = defocus(data, distances.data, width, height, (blur * width) / 1000);
  const pixels = enlarge(addGlow(focused, width, height, glow), width, height, size);
  const random = randomStream(`${shot.name} grain`);
  const bytes = expose(pixels, size.width, size.height, { exposure, grain, warmth, random });
  return sharp(bytes, { raw: { ...size, channels: 3 } })
    .sharpen({ sigma: 0.8, m1: 0.35, m2: 0.7 })
    .withIccProfile('srgb')
    .jpeg({ quality, chromaSubsampling: '4:2:0', mozjpeg: true })
    .toBuffer();
}

async function readLinear(file) {
  const { data, info } = await sharp(file)
    .removeAlpha()
    .toColourspace('rgb16')
    .raw({ depth: 'ushort' })
    .toBuffer({ resolveWithObject: true });
  const words = new Uint16Array(data.buffer, data.byteOffset, data.byteLength / 2);
  return { width: info.width, height: info.height, data: Float32Array.from(words, (word) => word / 65535) };
}

/** Blurs each pixel by its distance from the plane of focus; what is sharp and near does not bleed. */
function defocus(source, fog, width, height, strength) {
  const count = width * height;
  const circle = new Float32Array(count);
  const far = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    // The fog pass gives 1 - exp(-distance / focus).
    const relative = -Math.log(Math.max(1e-5, 1 - fog[i * 3]));
    far[i] = relative;
    circle[i] = Math.min(strength * 1.6, (strength * 2 * Math.abs(relative - 1)) / Math.max(0.2, relative));
  }
  const widest = spread(circle, width, height, Math.ceil(strength * 1.6));
  const result = new Float32Array(source.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      gather(i, x, y);
    }
  }
  return result;

  function gather(i, x, y) {
    let red = source[i * 3];
    let green = source[i * 3 + 1];
    let blue = source[i * 3 + 2];
    let total = 1;
    const reach = widest[i];
    if (reach > 0.7) {
      const samples = Math.min(110, Math.ceil(reach * reach * 1.3));
      for (let n = 1; n <= samples; n++) {
        const radius = reach * Math.sqrt(n / samples);
        const angle = n * goldenAngle;
        const sx = Math.round(x + radius * Math.cos(angle));
        const sy = Math.round(y + radius * Math.sin(angle));
        if (sx < 0 || sy < 0 || sx >= width || sy >= height) continue;
        const j = sy * width + sx;
        const size = far[j] > far[i] ? Math.min(circle[j], circle[i] * 2) : circle[j];
        const share = Math.min(1, Math.max(0, size - radius + 0.5));
        red += source[j * 3] * share;
        green += source[j * 3 + 1] * share;
        blue += source[j * 3 + 2] * share;
        total += share;
      }
    }
    result[i * 3] = red / total;
    result[i * 3 + 1] = green / total;
    result[i * 3 + 2] = blue / total;
  }
}

/** The widest circle that can reach each pixel, from a coarse grid. */
function spread(circle, width, height, reach) {
  const cell = Math.max(4, Math.ceil(reach / 2));
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  const most = new Float32Array(columns * rows);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const c = Math.floor(y / cell) * columns + Math.floor(x / cell);
      most[c] = Math.max(most[c], circle[y * width + x]);
    }
  }
  const widest = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const cy = Math.floor(y / cell);
      const cx = Math.floor(x / cell);
      let best = 0;
      for (let dy = -2; dy <= 2; dy++) {
        for (let dx = -2; dx <= 2; dx++) {
          const ny = cy + dy;
          const nx = cx + dx;
          if (ny >= 0 && nx >= 0 && ny < rows && nx < columns) best = Math.max(best, most[ny * columns + nx]);
        }
      }
      widest[y * width + x] = best;
    }
  }
  return widest;
}

/** Light that strays in the lens: bright spots spill wide and faintly. */
function addGlow(pixels, width, height, share) {
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
  return pixels.map((v, i) => {
    const x = (((i / 3) | 0) % width) / cell - 0.5;
    const y = ((i / 3 / width) | 0) / cell - 0.5;
    return v + share * between(coarse, columns, rows, x, y, i % 3);
  });
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

/** Catmull-Rom interpolation, first across, then down. */
function enlarge(pixels, width, height, size) {
  if (width === size.width && height === size.height) return pixels;
  const across = stretch(pixels, height, width, size.width, 3, width * 3, size.width * 3, 3);
  return stretch(across, size.width, height, size.height, size.width * 3, 3, 3, size.width * 3);
}

function stretch(source, lines, from, to, step, lineStep, lineStepOut, stepOut) {
  const result = new Float32Array(lines * to * 3);
  for (let n = 0; n < to; n++) {
    const place = ((n + 0.5) * from) / to - 0.5;
    const first = Math.floor(place);
    const t = place - first;
    const weights = [
      -0.5 * t + t * t - 0.5 * t ** 3,
      1 - 2.5 * t * t + 1.5 * t ** 3,
      0.5 * t + 2 * t * t - 1.5 * t ** 3,
      -0.5 * t * t + 0.5 * t ** 3,
    ];
    const places = [-1, 0, 1, 2].map((d) => Math.min(from - 1, Math.max(0, first + d)) * step);
    for (let line = 0; line < lines; line++) {
      for (let k = 0; k < 3; k++) {
        let sum = 0;
        for (let w = 0; w < 4; w++) sum += weights[w] * source[line * lineStep + places[w] + k];
        result[line * lineStepOut + n * stepOut + k] = Math.max(0, sum);
      }
    }
  }
  return result;
}

function expose(pixels, width, height, { exposure, grain, warmth, random }) {
  const bytes = Buffer.alloc(pixels.length);
  const balance = [1 + warmth, 1, 1 - warmth];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const corner = ((x / width - 0.5) ** 2 + (y / height - 0.5) ** 2) * 2;
      const fall = 1 - 0.28 * corner * corner - 0.1 * corner;
      const luma = (random() + random() + random() - 1.5) * 0.8;
      for (let k = 0; k < 3; k++) {
        const i = (y * width + x) * 3 + k;
        const linear = shoulder(Math.max(0, pixels[i] * exposure * balance[k] * fall));
        const shown = encode(linear);
        const chroma = (random() - 0.5) * 0.7;
        // Grain is strongest in the shadows.
        bytes[i] = Math.round(255 * Math.min(1, Math.max(0, shown + grain * (luma + chroma) * (1.25 - shown))));
      }
    }
  }
  return bytes;
}

/** Straight up to 0.6, then bending towards 1. */
function shoulder(v) {
  return v < 0.6 ? v : 0.6 + 0.4 * (1 - Math.exp(-(v - 0.6) / 0.4));
}

function encode(v) {
  return v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055;
}
