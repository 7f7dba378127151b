import { shrunken } from '../alignment/resizePlane.ts';
import { luminanceWeights, type Picture } from '../pixels/picture.ts';

/** What a picture looks like from afar, small enough to hold for every picture. */
export interface Signature {
  /** 64 bits as sixteen hexadecimal digits: how the luma goes over the picture. */
  readonly hash: string;
  /** Mean red, green and blue of 4 × 4 fields, row by row, 0 to 255. */
  readonly layout: readonly number[];
}

const side = 32;
const kept = 8;
const fields = 4;

/**
 * The luma shrunk to 32 × 32 without regard to its shape, its DCT-II, and of the 8 × 8 lowest frequencies one bit each,
 * row by row, set above their median (the constant one included); beside it the colours of 16 fields. Pictures below 32
 * pixels either way are enlarged by repeating pixels. Truth: tests/truth/geometry.
 */
export function signatureOf(picture: Picture): Signature {
  const large = enlarged(picture);
  const small = shrunken(large.rgb, large.width, large.height, side, side, 3);
  const [red, green, blue] = luminanceWeights;
  const luma = Float64Array.from(
    { length: side * side },
    (_, i) => red * (small[3 * i] ?? 0) + green * (small[3 * i + 1] ?? 0) + blue * (small[3 * i + 2] ?? 0),
  );
  const frequencies = lowFrequencies(luma);
  const sorted = frequencies.toSorted();
  const median = ((sorted[(kept * kept) / 2 - 1] ?? 0) + (sorted[(kept * kept) / 2] ?? 0)) / 2;
  const bits = Array.from(frequencies, (value) => (value > median ? 1 : 0));
  const digits = Array.from({ length: 16 }, (_, i) => Number.parseInt(bits.slice(4 * i, 4 * i + 4).join(''), 2));
  return {
    hash: digits.map((digit) => digit.toString(16)).join(''),
    layout: Array.from(shrunken(small, side, side, fields, fields, 3), Math.round),
  };
}

/** Share of the bits in which two pictures differ, 0 to 1. */
export function differingBits(a: Signature, b: Signature): number {
  let bits = 0;
  for (let i = 0; i < 16; i++) {
    const digits = Number.parseInt(a.hash[i] ?? '0', 16) ^ Number.parseInt(b.hash[i] ?? '0', 16);
    bits += (digits & 1) + ((digits >> 1) & 1) + ((digits >> 2) & 1) + (digits >> 3);
  }
  return bits / 64;
}

/**
 * How far the colours of the fields lie apart, root of the mean square, 0 to 255, after each channel of both was brought
 * to the same mean, since exposure and white balance differ within a burst.
 */
export function layoutDistance(a: Signature, b: Signature): number {
  const [one, two] = [evened(a.layout), evened(b.layout)];
  return Math.sqrt(one.reduce((sum, value, i) => sum + (value - (two[i] ?? 0)) ** 2, 0) / one.length);
}

function evened(layout: readonly number[]): readonly number[] {
  const means = [0, 1, 2].map(
    (channel) => layout.reduce((sum, value, i) => (i % 3 === channel ? sum + value : sum), 0) / (layout.length / 3),
  );
  return layout.map((value, i) => (value * 128) / Math.max(1, means[i % 3] ?? 1));
}

function lowFrequencies(luma: Float64Array): Float64Array {
  const cosines = Array.from({ length: kept }, (_, k) =>
    Float64Array.from({ length: side }, (_, n) => Math.cos((Math.PI * (2 * n + 1) * k) / (2 * side))),
  );
  const scale = (k: number) => Math.sqrt((k === 0 ? 1 : 2) / side);
  return Float64Array.from({ length: kept * kept }, (_, i) => {
    const [down, across] = [Math.floor(i / kept), i % kept];
    let sum = 0;
    for (let at = 0; at < luma.length; at++) {
      sum += (luma[at] ?? 0) * (cosines[down]?.[Math.floor(at / side)] ?? 0) * (cosines[across]?.[at % side] ?? 0);
    }
    // What rounding leaves of a frequency that is not there is no sign of either kind.
    const frequency = sum * scale(down) * scale(across);
    return Math.abs(frequency) < 1e-3 ? 0 : frequency;
  });
}

function enlarged(picture: Picture): Picture {
  const width = Math.max(side, picture.width);
  const height = Math.max(side, picture.height);
  if (width === picture.width && height === picture.height) return picture;
  const rgb = new Uint8Array(3 * width * height);
  for (let i = 0; i < width * height; i++) {
    const column = Math.floor(((i % width) * picture.width) / width);
    const row = Math.floor((Math.floor(i / width) * picture.height) / height);
    const at = 3 * (row * picture.width + column);
    rgb.set(picture.rgb.subarray(at, at + 3), 3 * i);
  }
  return { width, height, rgb };
}
