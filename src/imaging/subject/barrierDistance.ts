/**
 * How far each cell is from the picture's border, counted not in steps but in contrast: along the best way there, the
 * highest value met less the lowest. A thing that no way of its own colour ties to the border stands out whole, evenly
 * lit or not. Minimum barrier distance (R. Strand et al., CVIU 117, 2013), approximated by sweeps in raster order from
 * the corners in turn (J. Zhang et al., "Minimum Barrier Salient Object Detection at 80 FPS", ICCV 2015). In the units of
 * `values`.
 */
export function barrierDistance(values: Float32Array, width: number, height: number): Float32Array {
  const [distance, highest, lowest] = [values.slice().fill(Number.POSITIVE_INFINITY), values.slice(), values.slice()];
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const isBorder = row === 0 || column === 0 || row === height - 1 || column === width - 1;
      if (isBorder) distance[row * width + column] = 0;
    }
  }
  const relax = (at: number, from: number) => {
    const value = values[at] ?? 0;
    const high = Math.max(highest[from] ?? 0, value);
    const low = Math.min(lowest[from] ?? 0, value);
    if (high - low >= (distance[at] ?? 0)) return;
    distance[at] = high - low;
    highest[at] = high;
    lowest[at] = low;
  };
  for (let sweep = 0; sweep < sweeps; sweep++) {
    if (sweep % 2 === 0) {
      for (let row = 1; row < height; row++) {
        for (let column = 1, at = row * width + 1; column < width; column++, at++) {
          relax(at, at - 1);
          relax(at, at - width);
        }
      }
    } else {
      for (let row = height - 2; row >= 0; row--) {
        for (let column = width - 2, at = row * width + column; column >= 0; column--, at--) {
          relax(at, at + 1);
          relax(at, at + width);
        }
      }
    }
  }
  return distance;
}

const sweeps = 4;
