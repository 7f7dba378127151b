/** Catmull-Rom interpolation, first across, then down. */
export function enlarge({ width, height, data: pixels }, size) {
  const across = stretch(pixels, height, width, size.width, 3, width * 3, size.width * 3, 3);
  const data = stretch(across, size.width, height, size.height, size.width * 3, 3, 3, size.width * 3);
  return { ...size, data };
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
