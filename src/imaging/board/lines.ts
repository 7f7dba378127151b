import type { ImagePoint } from '../geometry/points.ts';

/** Points for which `across` · column + `down` · row = `offset`; across² + down² = 1. */
export interface Line {
  readonly across: number;
  readonly down: number;
  readonly offset: number;
}

/** Its normal points to the left of the way from the one to the other, seen with rows downwards. */
export function lineThrough(from: ImagePoint, to: ImagePoint): Line {
  const long = Math.hypot(to.column - from.column, to.row - from.row);
  const [across, down] = [(to.row - from.row) / long, -(to.column - from.column) / long];
  return { across, down, offset: across * from.column + down * from.row };
}

/** Where two lines cross; null where they are parallel within about a ten-thousandth of a degree. */
export function meetingOf(one: Line, other: Line): ImagePoint | null {
  const determinant = one.across * other.down - one.down * other.across;
  if (!(Math.abs(determinant) > 2e-6)) return null;
  return {
    column: (one.offset * other.down - one.down * other.offset) / determinant,
    row: (one.across * other.offset - one.offset * other.across) / determinant,
  };
}

/**
 * The line that most points lie on: least squares, with points that lie farther off counting less and less (Cauchy's
 * weights, P. Holland and R. Welsch, Comm. Stat. A6, 1977), `scale` pixels off counting half. Null for fewer than two
 * different points.
 */
export function lineAlong(points: readonly ImagePoint[], scale: number): Line | null {
  let weights = points.map(() => 1);
  let line: Line | null = null;
  for (let round = 0; round < rounds; round++) {
    line = weightedLine(points, weights);
    if (line === null) return null;
    const { across, down, offset } = line;
    weights = points.map(({ column, row }) => 1 / (1 + ((across * column + down * row - offset) / scale) ** 2));
  }
  return line;
}

const rounds = 10;

function weightedLine(points: readonly ImagePoint[], weights: readonly number[]): Line | null {
  let [total, column, row] = [0, 0, 0];
  points.forEach((point, index) => {
    const weight = weights[index] ?? 0;
    total += weight;
    column += weight * point.column;
    row += weight * point.row;
  });
  column /= total;
  row /= total;
  let [xx, xy, yy] = [0, 0, 0];
  points.forEach((point, index) => {
    const weight = weights[index] ?? 0;
    const [x, y] = [point.column - column, point.row - row];
    xx += weight * x * x;
    xy += weight * x * y;
    yy += weight * y * y;
  });
  if (!(xx + yy > 0)) return null;
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const [across, down] = [-Math.sin(angle), Math.cos(angle)];
  return { across, down, offset: across * column + down * row };
}
