import { composeHomographies } from './composeHomographies.ts';
import type { Homography } from './homography.ts';
import { invertHomography } from './invertHomography.ts';
import type { ImagePoint } from './points.ts';

/** Four points in turn. */
export type Four = readonly [ImagePoint, ImagePoint, ImagePoint, ImagePoint];

/**
 * The one view that takes four points to four others, in closed form by way of the unit square (P. Heckbert,
 * "Fundamentals of Texture Mapping and Image Warping", 1989, section 2.2.3). Null where three of either four lie on a
 * line. Truth: tests/truth/geometry.
 */
export function homographyOfFour(from: Four, to: Four): Homography | null {
  const back = fromSquare(from);
  const forth = fromSquare(to);
  const square = back && invertHomography(back);
  return square && forth && composeHomographies(forth, square);
}

function fromSquare(four: Four): Homography | null {
  if (hasThreeInLine(four)) return null;
  const [p, q, r, s] = four;
  const sumColumn = p.column - q.column + r.column - s.column;
  const sumRow = p.row - q.row + r.row - s.row;
  const qc = q.column - r.column;
  const qr = q.row - r.row;
  const sc = s.column - r.column;
  const sr = s.row - r.row;
  const determinant = qc * sr - sc * qr;
  const g = (sumColumn * sr - sc * sumRow) / determinant;
  const h = (qc * sumRow - sumColumn * qr) / determinant;
  return [
    q.column - p.column + g * q.column,
    s.column - p.column + h * s.column,
    p.column,
    q.row - p.row + g * q.row,
    s.row - p.row + h * s.row,
    p.row,
    g,
    h,
    1,
  ];
}

/** Twice the area of a triangle against the squared length of its longest side. */
function hasThreeInLine([p, q, r, s]: Four): boolean {
  return isFlat(p, q, r) || isFlat(q, r, s) || isFlat(r, s, p) || isFlat(s, p, q);
}

function isFlat(a: ImagePoint, b: ImagePoint, c: ImagePoint): boolean {
  const abc = b.column - a.column;
  const abr = b.row - a.row;
  const acc = c.column - a.column;
  const acr = c.row - a.row;
  const bcc = c.column - b.column;
  const bcr = c.row - b.row;
  const longest = Math.max(abc * abc + abr * abr, acc * acc + acr * acr, bcc * bcc + bcr * bcr);
  return !(Math.abs(abc * acr - acc * abr) > 1e-6 * longest);
}
