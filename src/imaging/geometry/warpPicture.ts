import type { Picture } from '../pixels/picture.ts';
import type { Homography } from './homography.ts';

/** A picture seen from elsewhere, and where it shows anything: 1 there, 0 where nothing was photographed. */
export interface WarpedPicture {
  readonly picture: Picture;
  readonly covered: Uint8Array;
}

/**
 * A picture as it looks through `view`, which takes points of the picture that is wanted to points of the given one.
 * Between pixels colours are blended linearly, in the coded values as they are; outside is black. Truth:
 * tests/truth/geometry.
 */
export function warpPicture(source: Picture, view: Homography, width: number, height: number): WarpedPicture {
  const rgb = new Uint8Array(3 * width * height);
  const covered = new Uint8Array(width * height);
  const from = source.rgb;
  const line = 3 * source.width;
  for (let row = 0, at = 0; row < height; row++) {
    for (let column = 0; column < width; column++, at++) {
      const depth = view[6] * column + view[7] * row + view[8];
      const x = (view[0] * column + view[1] * row + view[2]) / depth;
      const y = (view[3] * column + view[4] * row + view[5]) / depth;
      if (!(depth > 0 && x >= 0 && y >= 0 && x <= source.width - 1 && y <= source.height - 1)) continue;
      const left = Math.min(Math.floor(x), Math.max(source.width - 2, 0));
      const top = Math.min(Math.floor(y), Math.max(source.height - 2, 0));
      const right = source.width > 1 ? 3 : 0;
      const below = source.height > 1 ? line : 0;
      const dx = x - left;
      const dy = y - top;
      const first = top * line + 3 * left;
      for (let channel = 0; channel < 3; channel++) {
        const i = first + channel;
        const upper = (from[i] ?? 0) * (1 - dx) + (from[i + right] ?? 0) * dx;
        const lower = (from[i + below] ?? 0) * (1 - dx) + (from[i + below + right] ?? 0) * dx;
        rgb[3 * at + channel] = Math.round(upper * (1 - dy) + lower * dy);
      }
      covered[at] = 1;
    }
  }
  return { picture: { width, height, rgb }, covered };
}
