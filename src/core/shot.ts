import type { Hash, Path } from './place.ts';

/** Kinds of picture and clip, told by the bytes. */
export type ShotKind = 'jpeg' | 'png' | 'webp' | 'heic' | 'tiff' | 'gif' | 'svg' | 'clip';

/** What a picture's file gives away besides its pixels; never the values themselves. */
export interface Leaks {
  /** Non-zero, plausible coordinates are present. */
  readonly position: boolean;
  /** Names of the private groups found, such as `position`, `serial number`, `embedded preview`. */
  readonly fields: readonly string[];
}

/** One photo or clip of the build folder. Sizes in pixels, upright; null where the header does not tell. */
export interface Shot {
  readonly path: Path;
  readonly hash: Hash;
  readonly bytes: number;
  readonly kind: ShotKind;
  readonly width: number | null;
  readonly height: number | null;
  /** ISO 8601 local time as the camera wrote it, with zone where it says so. */
  readonly takenAt: string | null;
  readonly camera: string | null;
  readonly leaks: Leaks;
}

/** A clean copy that a renderer needs: `width` in pixels, never enlarged. */
export interface AssetWant {
  readonly shot: Path;
  readonly width: number;
  readonly format: 'jpeg' | 'webp' | 'png';
}

/** A clean copy that was made. `name` is unique within the outputs of one publish. */
export interface Asset extends AssetWant {
  readonly name: string;
  readonly height: number;
  readonly bytes: number;
}
