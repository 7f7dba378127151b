import sharp from 'sharp';
import type { BoardCorners, FlattenWish, FlatView, Result } from '#app/ports.ts';
import type { ShotKind } from '#core/shot.ts';
import type { PicturePoint } from '#core/shotChoice.ts';
import { findBoard } from '#imaging/board/findBoard.ts';
import { boardViewOf, flattenBoard } from '#imaging/geometry/flattenBoard.ts';
import type { Four } from '#imaging/geometry/homographyOfFour.ts';
import { scaleBarOf } from '#imaging/geometry/scaleBarOf.ts';
import type { Picture } from '#imaging/pixels/picture.ts';
import { decodePicture } from './decodePicture.ts';

/** Larger photos are decoded at this size: more detail than a flat view of common boards can show. */
const longest = 6000;
/** A board is looked for at this length. */
const searchedLength = 1024;

/** A board from straight above and true to scale, with a bar under it that tells the scale. */
export async function flattenPicture(kind: ShotKind, bytes: Uint8Array, wish: FlattenWish): Promise<Result<FlatView>> {
  const decoded = await decodePicture(kind, bytes, longest);
  if (!decoded.ok) return decoded;
  const corners = wish.corners ?? (await foundCorners(kind, bytes));
  if (corners === null) {
    return { ok: false, reason: 'No whole board was found in the picture. Name its four corners with --corners.' };
  }
  const view = boardViewOf(cornersIn(decoded.value, corners), wish.size);
  if (view === null) {
    return {
      ok: false,
      reason: 'Three of the corners lie on a line, so that nobody can tell how the board lies. Name four that do not.',
    };
  }
  const perMillimetre = wish.pixelsPerMillimetre ?? finestScale(decoded.value, corners, wish.size);
  const flat = flattenBoard(decoded.value, view, perMillimetre);
  const { data, height } = await withScaleBar(flat, wish, perMillimetre);
  return {
    ok: true,
    value: { data, width: flat.width, height, boardHeight: flat.height, pixelsPerMillimetre: perMillimetre, corners },
  };
}

/** The corners of a whole board, looked for in a small copy. */
async function foundCorners(kind: ShotKind, bytes: Uint8Array): Promise<BoardCorners | null> {
  const small = await decodePicture(kind, bytes, searchedLength);
  const [a, b, c, d] = (small.ok ? findBoard(small.value) : null)?.corners ?? [];
  const point = ([x, y]: readonly [number, number]): PicturePoint => ({ x, y });
  return a && b && c && d ? [point(a), point(b), point(c), point(d)] : null;
}

/** From fractions of the picture to pixels, which are counted from the centre of the first. */
function cornersIn({ width, height }: Picture, corners: BoardCorners): Four {
  const point = ({ x, y }: PicturePoint) => ({ column: x * width - 0.5, row: y * height - 0.5 });
  return [point(corners[0]), point(corners[1]), point(corners[2]), point(corners[3])];
}

/** As many pixels a millimetre as the photo has along the board's longest edge, so that nothing is lost or made up. */
function finestScale({ width, height }: Picture, corners: BoardCorners, size: FlattenWish['size']): number {
  const edges = corners.map((corner, i) => {
    const next = corners[(i + 1) % corners.length] ?? corner;
    const pixels = Math.hypot((next.x - corner.x) * width, (next.y - corner.y) * height);
    return pixels / (i % 2 === 0 ? size.width : size.height);
  });
  return Math.max(1, Math.round(Math.max(...edges)));
}

async function withScaleBar(flat: Picture, { size, format }: FlattenWish, perMillimetre: number) {
  const bar = scaleBarOf(size.width);
  const text = Math.max(10, Math.round(perMillimetre * size.width * 0.025));
  const strip = 3 * text;
  const drawing = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${flat.width}" height="${strip}">`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    ...Array.from({ length: bar.parts }, (_, i) => {
      const x = (i * bar.millimetres * perMillimetre) / bar.parts;
      const width = (bar.millimetres * perMillimetre) / bar.parts;
      return `<rect x="${text + x}" y="${text * 0.9}" width="${width}" height="${text * 0.45}" fill="${i % 2 === 0 ? '#000' : '#fff'}" stroke="#000"/>`;
    }),
    `<text x="${text}" y="${text * 2.4}" font-family="sans-serif" font-size="${text * 0.9}">${bar.millimetres} mm</text>`,
    '</svg>',
  ].join('');
  const image = sharp(flat.rgb, { raw: { width: flat.width, height: flat.height, channels: 3 } })
    .extend({ bottom: strip, background: '#ffffff' })
    .composite([{ input: Buffer.from(drawing), top: flat.height, left: 0 }])
    .removeAlpha();
  const encoded = format === 'png' ? image.png() : image.jpeg({ quality: 90, chromaSubsampling: '4:4:4' });
  const { data, info } = await encoded.toBuffer({ resolveWithObject: true });
  return { data: Uint8Array.from(data), height: info.height };
}
