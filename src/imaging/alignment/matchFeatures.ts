import type { PointPair } from '../geometry/solveHomography.ts';
import type { Features } from './findFeatures.ts';

/** Bits of 256 that may differ between two views of one corner. */
const mostBits = 72;
/** The best match has at most this share of the differing bits of the next best elsewhere (D. Lowe, IJCV 60, 2004). */
const ratio = 0.86;

/**
 * Corners of two pictures that look like one another: each is the other's best match by far. From `from` to `to`.
 */
export function matchFeatures(from: Features, to: Features): readonly PointPair[] {
  const forth = bestOf(from, to);
  const back = bestOf(to, from);
  const pairs: PointPair[] = [];
  for (let i = 0; i < from.count; i++) {
    const match = forth[i] ?? -1;
    if (match < 0 || Math.abs(back[match] ?? -1) !== i) continue;
    pairs.push({
      from: { column: from.columns[i] ?? 0, row: from.rows[i] ?? 0 },
      to: { column: to.columns[match] ?? 0, row: to.rows[match] ?? 0 },
    });
  }
  return pairs;
}

/** For each corner its best match in the other picture; −1 where there is none that stands out. */
function bestOf(features: Features, others: Features): Int32Array {
  const best = new Int32Array(features.count).fill(-1);
  for (let i = 0; i < features.count; i++) {
    let least = 257;
    let next = 257;
    let match = -1;
    for (let j = 0; j < others.count; j++) {
      const bits = differing(features.words, 8 * i, others.words, 8 * j, next);
      if (bits >= next) continue;
      if (match >= 0 && isSamePlace(others, match, j)) {
        if (bits < least) [least, match] = [bits, j];
      } else if (bits < least) {
        [next, least, match] = [least, bits, j];
      } else next = bits;
    }
    if (least <= mostBits && least < ratio * next) best[i] = match;
  }
  return best;
}

/** One corner found on two scales is no other corner. */
function isSamePlace({ columns, rows }: Features, i: number, j: number): boolean {
  return Math.abs((columns[i] ?? 0) - (columns[j] ?? 0)) < 4 && Math.abs((rows[i] ?? 0) - (rows[j] ?? 0)) < 4;
}

/** Differing bits; stops counting once they are `enough`. */
function differing(a: Uint32Array, i: number, b: Uint32Array, j: number, enough: number): number {
  let bits = 0;
  for (let k = 0; k < 8; k++) {
    let x = (a[i + k] ?? 0) ^ (b[j + k] ?? 0);
    x -= (x >>> 1) & 0x55555555;
    x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
    bits += Math.imul((x + (x >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
    if (bits >= enough) return bits;
  }
  return bits;
}
