import type { Path, Place } from '#core/place.ts';
import type { AssetWant, Shot, ShotKind } from '#core/shot.ts';
import type { ShotChoice } from '#core/shotChoice.ts';
import type { PictureRef } from '#core/text.ts';
import type { BlockNames } from './blockNames.ts';
import type { BlockId, MissingPictureBlock, PictureBlock } from './guide.ts';

/** Widths in pixels at which a picture is offered, unless the original is smaller. */
const bodyWidths = [480, 960, 1600];

/** The cover is also wanted at the width that page previews use. */
const coverWidths = [480, 960, 1200, 1600];

/** What is asked of a picture wherever it stands. */
interface Wanted {
  readonly parent: BlockId;
  readonly shot: Shot | undefined;
  readonly choice: ShotChoice | undefined;
  readonly names: BlockNames;
  /** Says what the picture belongs to, where the maker did not describe it. */
  readonly instead: string;
}

/** The picture that a text shows, or a block that says why it cannot be shown. */
export function composePicture(ref: PictureRef, wanted: Wanted): PictureBlock | MissingPictureBlock {
  const caption = ref.title?.trim() || wanted.choice?.caption || null;
  const alt = ref.alt.trim() || wanted.choice?.alt || caption || `${wanted.instead}; its maker did not describe it`;
  const why = reasonMissing(ref, wanted.shot);
  if (why === null && wanted.shot) {
    return pictureBlock(wanted.shot, bodyWidths, { ...wanted, alt, caption, places: [ref.place] });
  }
  const target = ref.path ?? ref.url;
  return {
    kind: 'missingPicture',
    id: wanted.names.within(wanted.parent, 'missing', target),
    places: [ref.place],
    wanted: target,
    alt: ref.alt.trim(),
    caption,
    why: why ?? 'unreadable',
  };
}

/** The cover as the settings name it. */
export function composeCoverPicture(
  path: Path,
  places: readonly Place[],
  wanted: Wanted & { readonly alt: string | null },
): PictureBlock | MissingPictureBlock {
  if (wanted.shot && wanted.shot.kind !== 'clip') {
    const alt = wanted.alt ?? wanted.choice?.alt ?? wanted.instead;
    return pictureBlock(wanted.shot, coverWidths, { ...wanted, alt, caption: null, places });
  }
  return {
    kind: 'missingPicture',
    id: wanted.names.within(wanted.parent, 'missing', path),
    places,
    wanted: path,
    alt: wanted.alt ?? '',
    caption: null,
    why: wanted.shot ? 'clip' : 'not-found',
  };
}

/** Drawings and screen pictures keep their sharp edges; everything else is a photo. */
function formatFor(kind: ShotKind): AssetWant['format'] {
  return kind === 'png' || kind === 'svg' || kind === 'gif' ? 'png' : 'jpeg';
}

function pictureBlock(
  shot: Shot,
  widths: readonly number[],
  more: Pick<Wanted, 'parent' | 'names' | 'choice'> & Pick<PictureBlock, 'alt' | 'caption' | 'places'>,
): PictureBlock {
  return {
    kind: 'picture',
    id: more.names.within(more.parent, 'picture', shot.path),
    places: more.places,
    shot: shot.path,
    width: shot.width,
    height: shot.height,
    widths: notEnlarged(widths, shot.width),
    format: formatFor(shot.kind),
    alt: more.alt,
    caption: more.caption,
    callouts: more.choice?.callouts ?? [],
  };
}

function notEnlarged(widths: readonly number[], original: number | null): number[] {
  if (original === null) return [...widths];
  const smaller = widths.filter((width) => width < original);
  return smaller.length < widths.length ? [...smaller, original] : smaller;
}

function reasonMissing(ref: PictureRef, shot: Shot | undefined): MissingPictureBlock['why'] | null {
  if (ref.path === null) return 'elsewhere';
  if (!ref.exists) return 'not-found';
  if (!shot) return 'unreadable';
  return shot.kind === 'clip' ? 'clip' : null;
}
