import sharp from 'sharp';
import type { Result } from '#app/ports.ts';
import type { ShotKind } from '#core/shot.ts';
import { type Picture, pictureFrom } from '#imaging/pixels/picture.ts';
import { decodeFailure } from './decodeFailure.ts';
import { openPixels, refusalOf } from './openPixels.ts';

/** The upright pixels of a picture in sRGB, its longest side at most `longest` pixels and never enlarged. */
export async function decodePicture(kind: ShotKind, bytes: Uint8Array, longest: number): Promise<Result<Picture>> {
  if (kind === 'clip') return { ok: false, reason: 'A clip is no picture. Take a still out of it first.' };
  try {
    const header = await sharp(bytes, { limitInputPixels: false }).metadata();
    const refusal = refusalOf(header);
    if (refusal !== null) return { ok: false, reason: refusal };
    const pixels = await openPixels(kind, header, bytes, longest);
    const { data, info } = await pixels
      .resize({ width: longest, height: longest, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .removeAlpha()
      .raw({ depth: 'uchar' })
      .toBuffer({ resolveWithObject: true });
    const rgb = info.channels === 1 ? threefold(data) : new Uint8Array(data.buffer, data.byteOffset, data.length);
    return { ok: true, value: pictureFrom(info.width, info.height, rgb) };
  } catch (error) {
    return { ok: false, reason: decodeFailure(error, kind, bytes) };
  }
}

/** A grey picture has one value a pixel. */
function threefold(grey: Uint8Array): Uint8Array {
  const rgb = new Uint8Array(3 * grey.length);
  for (let i = 0; i < grey.length; i++) rgb.fill(grey[i] ?? 0, 3 * i, 3 * i + 3);
  return rgb;
}
