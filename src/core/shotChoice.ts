import type { Hash, Path, TextPlace } from './place.ts';
import type { StepId } from './step.ts';

/** A point of an upright picture, as fractions of its width and height from the top left corner. */
export interface PicturePoint {
  readonly x: number;
  readonly y: number;
}

/** A mark on a picture; never drawn into the original. Sizes and distances are fractions of width and height. */
export type Callout = { readonly words: string | null } & (
  | { readonly kind: 'ring'; readonly centre: PicturePoint; readonly half: PicturePoint }
  | { readonly kind: 'box'; readonly corner: PicturePoint; readonly size: PicturePoint }
  | { readonly kind: 'arrow'; readonly from: PicturePoint; readonly to: PicturePoint }
  | { readonly kind: 'label' | 'number'; readonly at: PicturePoint }
);

/** What the maker decided about one shot. Null: not said. */
export interface ShotChoice {
  /** The first digits of the content's SHA-256, at least twelve. */
  readonly hash: Hash;
  readonly path: Path | null;
  readonly chosen: boolean | null;
  readonly alt: string | null;
  readonly caption: string | null;
  /** The steps that it belongs to, as written. */
  readonly steps: readonly StepId[];
  readonly callouts: readonly Callout[];
  readonly place: TextPlace;
}
