import { assert } from '#core/failure.ts';
import type { Plane } from '../pixels/picture.ts';

/** A plane made smaller: each new pixel is the mean of the area that it covers, weighted by how much of it. */
export function resizePlane(plane: Plane, width: number, height: number): Plane {
  if (width === plane.width && height === plane.height) return plane;
  const values = shrunken(plane.values, plane.width, plane.height, width, height, 1);
  return { width, height, values, coding: plane.coding };
}

/** The size with the given longest side, of the same shape; a smaller one stays as it is. */
export function sizeWithin({ width, height }: { width: number; height: number }, side: number) {
  const factor = Math.min(1, side / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * factor)), height: Math.max(1, Math.round(height * factor)) };
}

/** The same for values of so many `channels` that lie next to one another, as in a picture. */
export function shrunken(
  from: Float32Array | Uint8Array,
  oldWidth: number,
  oldHeight: number,
  width: number,
  height: number,
  channels: number,
): Float32Array {
  assert(
    width <= oldWidth && height <= oldHeight,
    `${oldWidth} × ${oldHeight} is not larger than ${width} × ${height}`,
  );
  const across = sharesOf(oldWidth, width);
  const down = sharesOf(oldHeight, height);
  const values = new Float32Array(width * height * channels);
  const line = new Float32Array(width * channels);
  for (let row = 0; row < oldHeight; row++) {
    line.fill(0);
    for (let column = 0, at = row * oldWidth * channels; column < oldWidth; column++) {
      const target = (across.targets[column] ?? 0) * channels;
      const own = across.own[column] ?? 0;
      const next = across.next[column] ?? 0;
      for (let channel = 0; channel < channels; channel++, at++) {
        const value = from[at] ?? 0;
        const i = target + channel;
        line[i] = (line[i] ?? 0) + own * value;
        if (next > 0) line[i + channels] = (line[i + channels] ?? 0) + next * value;
      }
    }
    const start = (down.targets[row] ?? 0) * line.length;
    addLine(values, start, line, down.own[row] ?? 0);
    const next = down.next[row] ?? 0;
    if (next > 0) addLine(values, start + line.length, line, next);
  }
  return values;
}

function addLine(values: Float32Array, start: number, line: Float32Array, weight: number): void {
  for (let i = 0; i < line.length; i++) values[start + i] = (values[start + i] ?? 0) + weight * (line[i] ?? 0);
}

/** For each old pixel the new one that it goes to, and its share in that and in the one after. */
function sharesOf(length: number, count: number) {
  const targets = new Int32Array(length);
  const own = new Float32Array(length);
  const next = new Float32Array(length);
  const scale = count / length;
  for (let i = 0; i < length; i++) {
    const target = Math.min(count - 1, Math.floor(i * scale + 1e-9));
    const inside = Math.min(scale, target + 1 - i * scale);
    targets[i] = target;
    own[i] = inside;
    next[i] = target + 1 < count && scale - inside > 1e-9 ? scale - inside : 0;
  }
  return { targets, own, next };
}
