import { lumaOf, type Picture, type Plane } from '../pixels/picture.ts';
import { blurPlane } from './blurPlane.ts';
import { evenLight } from './evenLight.ts';
import { type Features, findFeatures } from './findFeatures.ts';
import { type Landmarks, landmarksOf } from './refineHomography.ts';
import { resizePlane, sizeWithin } from './resizePlane.ts';

/** One size of a picture, without its light. */
export interface AlignableLevel {
  readonly even: Plane;
  readonly landmarks: Landmarks;
  /** Luma, lightly blurred: tells where anything is to be seen. */
  readonly luma: Plane;
}

/** What aligning needs of a picture; worth keeping where one picture is aligned with several. */
export interface Alignable {
  readonly width: number;
  readonly height: number;
  readonly features: Features;
  /** From coarse to fine. */
  readonly levels: readonly AlignableLevel[];
}

const sides = [64, 112, 192, 352, 640];

/** Reads corners and landmarks of a picture, at 640 pixels along its longest side at most. */
export function alignableOf(picture: Picture): Alignable {
  const luma = lumaOf(picture);
  const levels: AlignableLevel[] = [];
  let finer = luma;
  for (const side of sides.toReversed()) {
    const { width, height } = sizeWithin(luma, side);
    finer = resizePlane(finer, width, height);
    const smooth = blurPlane(finer, 1);
    const even = evenLight(smooth, Math.max(4, Math.round(side / 28)));
    levels.push({ even, landmarks: landmarksOf(even), luma: smooth });
  }
  const { width, height } = sizeWithin(luma, 640);
  return {
    width: picture.width,
    height: picture.height,
    features: findFeatures(resizePlane(luma, width, height)),
    levels: levels.toReversed(),
  };
}
