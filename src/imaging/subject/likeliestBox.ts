/** Rows and columns of cells, the last of each left out. */
export interface CellBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * The box that is expected to overlap most with the true one, when each cell says how likely it lies in that: it
 * maximises Σ inside / (area + Σ outside), the expected intersection over the expected union. A ratio is maximised by
 * guessing it, finding the box with the largest Σ (1 + ratio) · chance − ratio, and taking that box's ratio as the next
 * guess, until it stays (W. Dinkelbach, Management Science 13(7), 1967); each largest sum is found in all pairs of rows
 * by the fastest way for one row (J. Bentley, CACM 27(9), 1984). The overlap is 0 where no cell has a chance.
 */
export function likeliestBox(
  chances: Float32Array,
  width: number,
  height: number,
): { readonly box: CellBox; readonly overlap: number } {
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  let best: CellBox = { left: 0, top: 0, right: width, bottom: height };
  let overlap = total / (width * height);
  for (let round = 0; round < rounds; round++) {
    const weights = chances.map((chance) => (1 + overlap) * chance - overlap);
    const box = heaviestBox(weights, width, height);
    const next = overlapOf(chances, width, box);
    if (!(next > overlap)) break;
    best = box;
    overlap = next;
  }
  return { box: best, overlap };
}

/** The overlap with the true box that is expected of a box. */
export function overlapOf(chances: Float32Array, width: number, box: CellBox): number {
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  const inside = sumIn(chances, width, box);
  const area = (box.right - box.left) * (box.bottom - box.top);
  return inside / (area + total - inside);
}

/** More guesses than were ever needed; each at least halves what is missing. */
const rounds = 12;

function heaviestBox(weights: Float32Array, width: number, height: number): CellBox {
  let best: CellBox = { left: 0, top: 0, right: width, bottom: height };
  let most = Number.NEGATIVE_INFINITY;
  for (let top = 0; top < height; top++) {
    const columns = new Float32Array(width);
    for (let row = top; row < height; row++) {
      let sum = 0;
      let left = 0;
      for (let column = 0, at = row * width; column < width; column++, at++) {
        columns[column] = (columns[column] ?? 0) + (weights[at] ?? 0);
        if (sum <= 0) {
          sum = 0;
          left = column;
        }
        sum += columns[column] ?? 0;
        if (sum <= most) continue;
        most = sum;
        best = { left, top, right: column + 1, bottom: row + 1 };
      }
    }
  }
  return best;
}

function sumIn(values: Float32Array, width: number, { left, top, right, bottom }: CellBox): number {
  let sum = 0;
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) sum += values[row * width + column] ?? 0;
  }
  return sum;
}
