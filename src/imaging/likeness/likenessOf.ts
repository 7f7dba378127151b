import { type Alignable, alignableOf } from '../alignment/alignableOf.ts';
import { alignAlignables } from '../alignment/alignPictures.ts';
import { resizePlane, sizeWithin } from '../alignment/resizePlane.ts';
import type { Homography } from '../geometry/homography.ts';
import { invertHomography } from '../geometry/invertHomography.ts';
import { resizeHomography } from '../geometry/resizeHomography.ts';
import { warpPlane } from '../geometry/warpPlane.ts';
import { lumaOf, type Picture } from '../pixels/picture.ts';
import { changedRegions } from './changedRegions.ts';
import type { Region } from './regionsOf.ts';
import { ssim } from './ssim.ts';

/** How two pictures are alike. */
export type Likeness =
  | { readonly kind: 'other' }
  | {
      /** `same`: the same thing in the same state. `progress`: the same thing, changed since. */
      readonly kind: 'same' | 'progress';
      /** From points of the second picture to those of the first. */
      readonly homography: Homography;
      readonly confidence: number;
      /** Share of the first picture that the second shows. */
      readonly overlap: number;
      /** Structural similarity of the luma where both show something, at 256 pixels. */
      readonly ssim: number;
      /** What changed, in pixels of the first. */
      readonly changes: readonly Region[];
    };

/** A picture with what aligning needs of it. */
export interface Comparable {
  readonly picture: Picture;
  readonly alignable: Alignable;
}

/** Makes a picture ready to be compared with several. */
export function comparableOf(picture: Picture): Comparable {
  return { picture, alignable: alignableOf(picture) };
}

/** Below this share of agreement, what moved is more than a part. */
const leastConfidence = 0.9;
/** Two frames of one burst show at least so much of one another. */
const leastOverlap = 0.5;

/**
 * Whether two pictures show the same, the same with something changed, or something else. The same: nine tenths of what
 * can be told agrees, half of the first is in view, and no region changed.
 */
export function likenessOf(first: Comparable, second: Comparable): Likeness {
  const alignment = alignAlignables(first.alignable, second.alignable);
  const changes = alignment && changedRegions(first.picture, second.picture, alignment.homography);
  if (!alignment || !changes) return { kind: 'other' };
  const { homography, confidence } = alignment;
  const { overlap, similarity } = overlapOf(first.picture, second.picture, homography);
  const same = confidence >= leastConfidence && overlap >= leastOverlap && changes.length === 0;
  return { kind: same ? 'same' : 'progress', homography, confidence, overlap, ssim: similarity, changes };
}

function overlapOf(first: Picture, second: Picture, homography: Homography) {
  const size = sizeWithin(first, 256);
  const other = sizeWithin(second, 256);
  const view = invertHomography(resizeHomography(homography, other.width / second.width, size.width / first.width));
  if (!view) return { overlap: 0, similarity: 0 };
  const one = resizePlane(lumaOf(first), size.width, size.height);
  const two = resizePlane(lumaOf(second), other.width, other.height);
  const values = warpPlane(two, view, size.width, size.height);
  const shown = values.filter((value) => !Number.isNaN(value)).length;
  return { overlap: shown / values.length, similarity: ssim(one, { ...size, values }) ?? 0 };
}
