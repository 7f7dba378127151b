import { composeHomographies } from './composeHomographies.ts';
import type { Homography } from './homography.ts';

/**
 * The same view between pictures of other sizes: `from` and `to` say how many times larger the pictures are that it is
 * wanted for. Pixels are areas, so the centre of the first pixel moves: new = (old + ½) · factor − ½.
 */
export function resizeHomography(h: Homography, from: number, to: number): Homography {
  return composeHomographies(enlarging(to), composeHomographies(h, enlarging(1 / from)));
}

function enlarging(factor: number): Homography {
  const shift = factor / 2 - 0.5;
  return [factor, 0, shift, 0, factor, shift, 0, 0, 1];
}
