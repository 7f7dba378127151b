import type { Build } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import type { PictureRef } from '#core/text.ts';

/** A picture that the guide shows, with the file that shows it. */
export interface ShownPicture {
  readonly picture: PictureRef;
  readonly from: Path;
}

/** All pictures of the guide and of pages beside it, in reading order. */
export function shownPictures(build: Build): ShownPicture[] {
  return [...build.instructions.sections, ...build.beside].flatMap(({ pictures, file }) =>
    pictures.map((picture) => ({ picture, from: file })),
  );
}

/** The host of a picture that lies elsewhere on the web; null for one of the folder or inside the text itself. */
export function hostOf(url: string): string | null {
  return /^(?:https?:)?\/\/([^/?#\s]+)/i.exec(url)?.[1]?.toLowerCase() ?? null;
}

/** Whether an address names a place on the maker's own machine. */
export function isOnOwnMachine(url: string): boolean {
  return /^file:/i.test(url) || /^[a-z]:[\\/]/i.test(url) || /^\/(?:home|Users|mnt|media|Volumes)\//.test(url);
}
