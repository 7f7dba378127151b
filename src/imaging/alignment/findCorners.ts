import type { Plane } from '../pixels/picture.ts';

/** A corner: where, and how pronounced against others of the same plane. */
export interface Corner {
  readonly column: number;
  readonly row: number;
  readonly score: number;
}

/** The circle of sixteen pixels of the segment test, three pixels round the middle, clockwise from above. */
const circle = [
  [0, -3],
  [1, -3],
  [2, -2],
  [3, -1],
  [3, 0],
  [3, 1],
  [2, 2],
  [1, 3],
  [0, 3],
  [-1, 3],
  [-2, 2],
  [-3, 1],
  [-3, 0],
  [-3, -1],
  [-2, -2],
  [-1, -3],
] as const;

/** Whether nine in a row of the sixteen bits are set. */
const hasArc = Uint8Array.from({ length: 65536 }, (_, bits) => {
  const twice = bits * 65537;
  for (let start = 0; start < 16; start++) if (((twice / 2 ** start) & 511) === 511) return 1;
  return 0;
});

/**
 * Corners that keep `margin` pixels from the edges: at least nine pixels in a row, of sixteen on a circle, brighter or
 * darker than the middle by `contrast` (E. Rosten, T. Drummond, ECCV 2006), ranked by the lesser eigenvalue of the
 * gradients in 7 × 7 pixels (J. Shi, C. Tomasi, CVPR 1994), the strongest of each three pixels round, spread over the
 * plane: of each of its `cells` × `cells` fields the strongest `each`.
 */
export function findCorners(
  plane: Plane,
  { margin, contrast, cells, each }: { margin: number; contrast: number; cells: number; each: number },
): readonly Corner[] {
  const { width, height } = plane;
  const scores = new Float32Array(width * height);
  const found: number[] = [];
  const edge = Math.max(margin, 4);
  const offsets = Int32Array.from(circle, ([column, row]) => row * width + column);
  for (let row = edge; row < height - edge; row++) {
    for (let at = row * width + edge; at < (row + 1) * width - edge; at++) {
      if (!passesSegmentTest(plane.values, at, offsets, contrast)) continue;
      scores[at] = lesserEigenvalue(plane.values, at, width);
      found.push(at);
    }
  }
  const fields = new Map<number, Corner[]>();
  for (const at of found) {
    const score = scores[at] ?? 0;
    if (!isStrongestAround(scores, at, width, score)) continue;
    const [column, row] = [at % width, Math.floor(at / width)];
    const field = Math.floor((cells * column) / width) + cells * Math.floor((cells * row) / height);
    const others = fields.get(field);
    if (others) others.push({ column, row, score });
    else fields.set(field, [{ column, row, score }]);
  }
  return [...fields.values()].flatMap((corners) => corners.sort((a, b) => b.score - a.score).slice(0, each));
}

function passesSegmentTest(values: Float32Array, at: number, offsets: Int32Array, contrast: number): boolean {
  const middle = values[at] ?? 0;
  const high = middle + contrast;
  const low = middle - contrast;
  const above = values[at + (offsets[0] ?? 0)] ?? 0;
  const below = values[at + (offsets[8] ?? 0)] ?? 0;
  const right = values[at + (offsets[4] ?? 0)] ?? 0;
  const left = values[at + (offsets[12] ?? 0)] ?? 0;
  // Nine in a row hold at least two neighbours of the four.
  const bright = (above > high || below > high) && (right > high || left > high);
  const dark = (above < low || below < low) && (right < low || left < low);
  if (!bright && !dark) return false;
  let brighter = 0;
  let darker = 0;
  for (let i = 0; i < 16; i++) {
    const value = values[at + (offsets[i] ?? 0)] ?? 0;
    if (value > high) brighter |= 1 << i;
    else if (value < low) darker |= 1 << i;
  }
  return hasArc[brighter] === 1 || hasArc[darker] === 1;
}

function lesserEigenvalue(values: Float32Array, at: number, width: number): number {
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (let dr = -3; dr <= 3; dr++) {
    for (let i = at + dr * width - 3; i <= at + dr * width + 3; i++) {
      const gx = (values[i + 1] ?? 0) - (values[i - 1] ?? 0);
      const gy = (values[i + width] ?? 0) - (values[i - width] ?? 0);
      xx += gx * gx;
      yy += gy * gy;
      xy += gx * gy;
    }
  }
  return (xx + yy - Math.sqrt((xx - yy) ** 2 + 4 * xy * xy)) / 2;
}

function isStrongestAround(scores: Float32Array, at: number, width: number, score: number): boolean {
  for (let dr = -3; dr <= 3; dr++) {
    for (let i = at + dr * width - 3; i <= at + dr * width + 3; i++) {
      const other = scores[i] ?? 0;
      if (other > score || (other === score && i < at)) return false;
    }
  }
  return true;
}
