import sharp from 'sharp';
import { type Picture, pictureFrom } from '#imaging/pixels/picture.ts';

/** A photo upright, with its longest side so many pixels. */
export async function readPhoto(file: string | Buffer, side: number): Promise<Picture> {
  const { data, info } = await sharp(file)
    .rotate()
    .resize(side, side, { fit: 'inside', withoutEnlargement: true })
    .removeAlpha()
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return pictureFrom(info.width, info.height, new Uint8Array(data));
}
