import sharp from 'sharp';
import type { Comparison, Result } from '#app/ports.ts';
import type { Box } from '#core/place.ts';
import type { ShotKind } from '#core/shot.ts';
import { alignPictures } from '#imaging/alignment/alignPictures.ts';
import { applyHomography } from '#imaging/geometry/applyHomography.ts';
import { type Homography, scaledHomography } from '#imaging/geometry/homography.ts';
import { invertHomography } from '#imaging/geometry/invertHomography.ts';
import { resizeHomography } from '#imaging/geometry/resizeHomography.ts';
import { changedRegions } from '#imaging/likeness/changedRegions.ts';
import type { Region } from '#imaging/likeness/regionsOf.ts';
import type { Picture } from '#imaging/pixels/picture.ts';
import { decodePicture } from './decodePicture.ts';

/** Pictures are laid over one another at this length. */
const comparedLength = 1024;

/** How the second of two pictures lies over the first, and where they differ. */
export async function comparePictures(
  [firstKind, first]: readonly [ShotKind, Uint8Array],
  [secondKind, second]: readonly [ShotKind, Uint8Array],
): Promise<Result<Comparison>> {
  const [a, b] = [
    await decodePicture(firstKind, first, comparedLength),
    await decodePicture(secondKind, second, comparedLength),
  ];
  if (!a.ok) return a;
  if (!b.ok) return b;
  const alignment = alignPictures(a.value, b.value);
  if (alignment === null) return { ok: true, value: { alignment: null } };
  const [wide, otherWide] = [await uprightWidth(first), await uprightWidth(second)];
  const back = invertHomography(alignment.homography);
  const regions = changedRegions(a.value, b.value, alignment.homography);
  return {
    ok: true,
    value: {
      alignment: {
        homography: scaledHomography(
          resizeHomography(alignment.homography, otherWide / b.value.width, wide / a.value.width),
        ),
        confidence: alignment.confidence,
      },
      changes: regions === null ? null : regions.map((region) => changeOf(region, a.value, b.value, back)),
    },
  };
}

async function uprightWidth(bytes: Uint8Array): Promise<number> {
  return (await sharp(bytes, { limitInputPixels: false }).metadata()).autoOrient.width;
}

function changeOf({ box, area }: Region, first: Picture, second: Picture, back: Homography | null) {
  const corners = [
    { column: box.column, row: box.row },
    { column: box.column + box.width, row: box.row },
    { column: box.column + box.width, row: box.row + box.height },
    { column: box.column, row: box.row + box.height },
  ];
  const there = back === null ? [] : corners.map((corner) => applyHomography(back, corner));
  return {
    box: fractionsOf(corners, first),
    area: area / (first.width * first.height),
    inSecond: there.length === 0 ? null : fractionsOf(there, second),
  };
}

/** The upright box round points, cut off at the picture's edges. */
function fractionsOf(points: readonly { column: number; row: number }[], { width, height }: Picture): Box {
  const within = (value: number) => Math.min(1, Math.max(0, value));
  const [xs, ys] = [points.map(({ column }) => column / width), points.map(({ row }) => row / height)];
  const [x, y] = [within(Math.min(...xs)), within(Math.min(...ys))];
  return { x, y, width: within(Math.max(...xs)) - x, height: within(Math.max(...ys)) - y };
}
