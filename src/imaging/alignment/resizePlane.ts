import type { Plane } from '../pixels/picture.ts';

/** A plane of another size: each new pixel is the mean of the area that it covers, weighted by how much of it. */
export function resizePlane(plane: Plane, width: number, height: number): Plane {
  if (width === plane.width && height === plane.height) return plane;
  const across = new Float32Array(width * plane.height);
  average(plane.values, across, plane.width, width, plane.height, 1, plane.width, 1, width);
  const values = new Float32Array(width * height);
  average(across, values, plane.height, height, width, width, 1, width, 1);
  return { width, height, values, coding: plane.coding };
}

/** The size with the given longest side, of the same shape; a smaller one stays as it is. */
export function sizeWithin({ width, height }: { width: number; height: number }, side: number) {
  const factor = Math.min(1, side / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * factor)), height: Math.max(1, Math.round(height * factor)) };
}

function average(
  from: Float32Array,
  to: Float32Array,
  length: number,
  count: number,
  lines: number,
  step: number,
  line: number,
  newStep: number,
  newLine: number,
): void {
  const span = length / count;
  for (let i = 0; i < count; i++) {
    const start = i * span;
    const end = Math.min(length, start + span);
    const first = Math.floor(start);
    const last = Math.min(length - 1, Math.ceil(end) - 1);
    for (let k = first; k <= last; k++) {
      const weight = (Math.min(end, k + 1) - Math.max(start, k)) / span;
      for (let l = 0; l < lines; l++) {
        const at = i * newStep + l * newLine;
        to[at] = (to[at] ?? 0) + weight * (from[k * step + l * line] ?? 0);
      }
    }
  }
}
