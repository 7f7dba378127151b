import { type Homography, scaledHomography } from './homography.ts';

/** The view back, from the cofactors; null for a view that flattens the plane into a line. */
export function invertHomography(h: Homography): Homography | null {
  const [a, b, c, d, e, f, g, i, j] = h;
  const first = e * j - f * i;
  const second = f * g - d * j;
  const third = d * i - e * g;
  const determinant = a * first + b * second + c * third;
  if (!(Math.abs(determinant) > 1e-14 * Math.hypot(...h) ** 3)) return null;
  return scaledHomography([
    first,
    c * i - b * j,
    b * f - c * e,
    second,
    a * j - c * g,
    c * d - a * f,
    third,
    b * g - a * i,
    a * e - b * d,
  ]);
}
