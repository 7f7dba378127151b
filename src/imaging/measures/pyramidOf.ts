import { halved } from '../pixels/halved.ts';
import type { Plane } from '../pixels/picture.ts';

/** The same picture at full size and at a half, a quarter and an eighth of it. */
export type Pyramid = readonly [Plane, Plane, Plane, Plane];

export function pyramidOf(plane: Plane): Pyramid {
  const half = halved(plane);
  const quarter = halved(half);
  return [plane, half, quarter, halved(quarter)];
}
