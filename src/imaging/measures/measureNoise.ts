import type { Plane } from '../pixels/picture.ts';
import { findFlat } from './findFlat.ts';
import type { Pyramid } from './pyramidOf.ts';
import { quantileOf } from './quantileOf.ts';

export interface Noise {
  /** Standard deviation in code values of 0 to 255; null where no block is flat enough to tell. */
  readonly sigma: number | null;
  /** Mean square of a directional central difference that noise alone makes, at full and at half size. */
  readonly floors: readonly [number, number];
}

/** Where most blocks are plain, the lower half of them tells: the others may hold texture. */
const plainShare = 0.5;

/**
 * Noise of luma, from the flattest blocks of the picture. In each block σ = √(π/2) · mean |M ∗ I| / 6 with
 * M = [1 −2 1; −2 4 −2; 1 −2 1], which sees no ramp (J. Immerkær, Computer Vision and Image Understanding 64(2), 1996).
 * Truth: tests/truth/measures.
 */
export function measureNoise(pyramid: Pyramid): Noise {
  const flat = findFlat(pyramid);
  if (flat.length === 0) return { sigma: null, floors: [0, 0] };
  const [full, half] = pyramid;
  const sigmas = flat.map(({ left, top }) => (Math.sqrt(Math.PI / 2) * meanOfMask(full, left, top)) / 6);
  return {
    sigma: 255 * quantileOf(sigmas, plainShare),
    floors: [
      quantileOf(
        flat.map(({ left, top }) => meanSquare(full, left, top, 8)),
        plainShare,
      ),
      quantileOf(
        flat.map(({ left, top }) => meanSquare(half, left >> 1, top >> 1, 4)),
        plainShare,
      ),
    ],
  };
}

function meanOfMask({ width, values }: Plane, left: number, top: number): number {
  let sum = 0;
  for (let row = top; row < top + 8; row++) {
    for (let at = row * width + left, end = at + 8; at < end; at++) {
      const above = at - width;
      const below = at + width;
      const corners =
        (values[above - 1] ?? 0) + (values[above + 1] ?? 0) + (values[below - 1] ?? 0) + (values[below + 1] ?? 0);
      const sides = (values[above] ?? 0) + (values[below] ?? 0) + (values[at - 1] ?? 0) + (values[at + 1] ?? 0);
      sum += Math.abs(corners - 2 * sides + 4 * (values[at] ?? 0));
    }
  }
  return sum / 64;
}

function meanSquare({ width, values }: Plane, left: number, top: number, size: number): number {
  let sum = 0;
  for (let row = top; row < top + size; row++) {
    for (let at = row * width + left, end = at + size; at < end; at++) {
      const across = (values[at + 1] ?? 0) - (values[at - 1] ?? 0);
      const down = (values[at + width] ?? 0) - (values[at - width] ?? 0);
      sum += across * across + down * down;
    }
  }
  // Halves of the differences, squared, and two directions.
  return sum / (8 * size * size);
}
