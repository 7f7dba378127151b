/**
 * Light as bytes: what the sensor and its program make of it. `exposure` is a factor, `gains` one for red, green and
 * blue (an error of the white balance), `fall` how much darker the corners are (share), `grain` a share of white.
 */
export function expose({ width, height, data: pixels }, { exposure, gains, fall, grain, random }) {
  const bytes = Buffer.alloc(pixels.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const corner = ((x / width - 0.5) ** 2 + (y / height - 0.5) ** 2) * 2;
      const left = 1 - fall * (0.74 * corner * corner + 0.26 * corner);
      const luma = (random() + random() + random() - 1.5) * 0.8;
      for (let k = 0; k < 3; k++) {
        const i = (y * width + x) * 3 + k;
        const linear = shoulder(Math.max(0, pixels[i] * exposure * gains[k] * left));
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
