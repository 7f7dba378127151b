const goldenAngle = Math.PI * (3 - Math.sqrt(5));

/**
 * Radius of the blur at a distance, in the unit of `strength`: that of the blur at twice the distance of focus.
 * Distances count in distances of focus.
 */
export function circleAt(distance, strength) {
  return Math.min(strength * 1.6, (strength * 2 * Math.abs(distance - 1)) / Math.max(0.2, distance));
}

/**
 * Blurs each pixel by its distance from the plane of focus; what is sharp and near does not bleed. `far` counts in
 * distances of focus, `strength` in pixels.
 */
export function defocus({ width, height, data: source }, { data: far }, strength) {
  const circle = far.map((distance) => circleAt(distance, strength));
  const widest = spread(circle, width, height, Math.ceil(strength * 1.6));
  const result = new Float32Array(source.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      gather(i, x, y);
    }
  }
  return { width, height, data: result };

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
