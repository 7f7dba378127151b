import { shrunken } from '../alignment/resizePlane.ts';
import type { Picture } from '../pixels/picture.ts';

/** Red, green and blue of a picture apart, coded, 0 to 1. */
export interface Channels {
  readonly width: number;
  readonly height: number;
  readonly planes: readonly [Float32Array, Float32Array, Float32Array];
}

/** A picture's channels at a smaller size. */
export function channelsOf(picture: Picture, width: number, height: number): Channels {
  const small = shrunken(picture.rgb, picture.width, picture.height, width, height, 3);
  const channel = (which: number) => {
    const values = new Float32Array(width * height);
    for (let i = 0; i < values.length; i++) values[i] = (small[3 * i + which] ?? 0) / 255;
    return values;
  };
  return { width, height, planes: [channel(0), channel(1), channel(2)] };
}

/** Side of the squares that have a median each, in pixels. */
export const cell = 32;
/** Only every so many pixels are looked at in each direction. */
const stride = 5;
/** Keeps black from having an endless ratio. */
const floor = 0.06;
/** Coded value from which on a channel may have been clipped. */
const clipped = 0.95;

/**
 * The second picture in the light of the first: each channel times a gain that changes slowly over the picture, the
 * median of the ratios in 96 × 96 pixels round, which a part that covers less than half of them does not move. Where
 * either picture is clipped, both are cut at what is left of the brighter one, so that no clipping counts as a change.
 */
export function matchLight(first: Channels, second: Channels, compared: Uint8Array): [Channels, Channels] {
  const { width, height } = first;
  const red = litChannel(first, second, compared, 0);
  const green = litChannel(first, second, compared, 1);
  const blue = litChannel(first, second, compared, 2);
  return [
    { width, height, planes: [red.one, green.one, blue.one] },
    { width, height, planes: [red.two, green.two, blue.two] },
  ];
}

function litChannel(first: Channels, second: Channels, compared: Uint8Array, which: 0 | 1 | 2) {
  const { width, height } = first;
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  const one = first.planes[which].slice();
  const two = second.planes[which].slice();
  const gains = mediansAround(width, height, compared, (at) =>
    Math.log(((one[at] ?? 0) + floor) / ((two[at] ?? 0) + floor)),
  );
  for (let row = 0, at = 0; row < height; row++) {
    for (let column = 0; column < width; column++, at++) {
      const factor = Math.exp(between(gains, columns, rows, column / cell - 0.5, row / cell - 0.5));
      const ceiling = Math.min(clipped, (clipped + floor) * factor - floor);
      one[at] = Math.min(ceiling, one[at] ?? 0);
      two[at] = Math.min(ceiling, ((two[at] ?? 0) + floor) * factor - floor);
    }
  }
  return { one, two };
}

/** For each 32 × 32 pixels the median of something over 96 × 96 round, of every fifth pixel in each direction. */
export function mediansAround(
  width: number,
  height: number,
  compared: Uint8Array,
  of: (at: number) => number,
): Float32Array {
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  const samples = Array.from({ length: columns * rows }, (): number[] => []);
  const all: number[] = [];
  for (let row = 1; row < height; row += stride) {
    for (let column = 1; column < width; column += stride) {
      const at = row * width + column;
      if (compared[at] !== 1) continue;
      const value = of(at);
      samples[Math.floor(row / cell) * columns + Math.floor(column / cell)]?.push(value);
      all.push(value);
    }
  }
  const whole = medianOf(all);
  return Float32Array.from(samples, (_, i) => {
    const near: number[] = [];
    for (let row = Math.floor(i / columns) - 1; row <= Math.floor(i / columns) + 1; row++) {
      for (let column = (i % columns) - 1; column <= (i % columns) + 1; column++) {
        if (row >= 0 && column >= 0 && row < rows && column < columns)
          near.push(...(samples[row * columns + column] ?? []));
      }
    }
    return near.length < 40 ? whole : medianOf(near);
  });
}

/** The middle one of the numbers; 0 of none. */
export function medianOf(values: readonly number[]): number {
  return Float32Array.from(values).sort()[Math.floor(values.length / 2)] ?? 0;
}

function between(values: Float32Array, columns: number, rows: number, x: number, y: number): number {
  const column = Math.min(columns - 1, Math.max(0, x));
  const row = Math.min(rows - 1, Math.max(0, y));
  const [left, top] = [Math.floor(column), Math.floor(row)];
  const [right, below] = [Math.min(columns - 1, left + 1), Math.min(rows - 1, top + 1)];
  const [dx, dy] = [column - left, row - top];
  const upper = (values[top * columns + left] ?? 0) * (1 - dx) + (values[top * columns + right] ?? 0) * dx;
  const lower = (values[below * columns + left] ?? 0) * (1 - dx) + (values[below * columns + right] ?? 0) * dx;
  return upper * (1 - dy) + lower * dy;
}
