import type { Channels } from './matchLight.ts';

/** How far what stands up may be seen shifted against the board, in pixels. */
const reach = 10;
/** Pixels round the part that are looked at with it: the edges of what moved. */
const around = 4;
/** Correlation from which on two places look alike. */
const alike = 0.75;
/** Parts that cover more pixels than this did not merely move. */
const largest = 6000;

/**
 * Whether a changed part of a picture is only seen from another side: what either picture shows there, the other shows
 * nearby as well. Something that was fitted is nowhere in the earlier picture. Pixels by their place, in both pictures.
 */
export function isMoved(pixels: readonly number[], first: Channels, second: Channels): boolean {
  const { width, height } = first;
  const columns = pixels.map((at) => at % width);
  const rows = pixels.map((at) => Math.floor(at / width));
  const left = Math.max(0, columns.reduce((least, column) => Math.min(least, column), width) - around);
  const right = Math.min(width - 1, columns.reduce((most, column) => Math.max(most, column), 0) + around);
  const top = Math.max(0, rows.reduce((least, row) => Math.min(least, row), height) - around);
  const bottom = Math.min(height - 1, rows.reduce((most, row) => Math.max(most, row), 0) + around);
  if ((right - left) * (bottom - top) > largest) return false;
  const box = { left, right, top, bottom };
  return isNearby(first, second, box) && isNearby(second, first, box);
}

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Whether what one picture shows in the box is in the other, some pixels away. */
function isNearby(one: Channels, other: Channels, box: Bounds): boolean {
  for (let down = -reach; down <= reach; down++) {
    for (let across = -reach; across <= reach; across++) {
      if (across * across + down * down > reach * reach) continue;
      if (correlation(one, other, box, across, down) > alike) return true;
    }
  }
  return false;
}

/** Of all three channels at every other pixel; 0 where the shifted box leaves the picture. */
function correlation(one: Channels, other: Channels, box: Bounds, across: number, down: number): number {
  const { width, height } = one;
  if (box.left + across < 0 || box.right + across >= width || box.top + down < 0 || box.bottom + down >= height)
    return 0;
  let [product, squares, others, count] = [0, 0, 0, 0];
  for (const channel of [0, 1, 2] as const) {
    const [a, b] = [one.planes[channel], other.planes[channel]];
    let [sumA, sumB, squareA, squareB, both, seen] = [0, 0, 0, 0, 0, 0];
    for (let row = box.top; row <= box.bottom; row += 2) {
      for (let column = box.left; column <= box.right; column += 2) {
        const p = a[row * width + column] ?? 0;
        const q = b[(row + down) * width + column + across] ?? 0;
        sumA += p;
        sumB += q;
        squareA += p * p;
        squareB += q * q;
        both += p * q;
        seen++;
      }
    }
    product += both - (sumA * sumB) / seen;
    squares += squareA - (sumA * sumA) / seen;
    others += squareB - (sumB * sumB) / seen;
    count += seen;
  }
  return product / Math.sqrt((squares + 1e-5 * count) * (others + 1e-5 * count));
}
