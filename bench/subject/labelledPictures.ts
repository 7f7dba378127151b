import { readFile } from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import { type Picture, pictureFrom } from '#imaging/pixels/picture.ts';

type Box = readonly [number, number, number, number];

/** A picture and what is known of it; places are shares of its width and height. */
export interface LabelledPicture {
  readonly name: string;
  readonly file: string;
  /** Of the subject: left, top, width, height. */
  readonly box: Box;
  /** Of the board, clockwise from the top left; null where no whole board is in view, undefined where nobody looked. */
  readonly corners?: readonly (readonly [number, number])[] | null;
  /** Pictures of one scene share its name. */
  readonly scene: string;
}

/** Upright, sRGB, 1024 pixels along the longer side at most. */
export async function decodePicture(file: string): Promise<Picture> {
  const { data, info } = await sharp(file, { failOn: 'none' })
    .rotate()
    .toColourspace('srgb')
    .removeAlpha()
    .resize(1024, 1024, { fit: 'inside', withoutEnlargement: true })
    .raw()
    .toBuffer({ resolveWithObject: true });
  return pictureFrom(info.width, info.height, new Uint8Array(data));
}

/** The demo's rendered photos with the truth that lies beside their scenes. */
export async function demoPictures(root: string): Promise<readonly LabelledPicture[]> {
  const truth = JSON.parse(await readFile(path.join(root, 'demo/scenes/truth.json'), 'utf8')) as {
    name: string;
    shows: string;
    subject: { box: Box };
    board: { corners: LabelledPicture['corners'] } | null;
  }[];
  return truth.map(({ name, shows, subject, board }) => ({
    name,
    file: path.join(root, 'demo/tide-lamp/photos', name),
    box: subject.box,
    corners: board?.corners ?? null,
    scene: shows.startsWith('the fixed camera') ? 'the fixed camera' : shows,
  }));
}

/** Every second scene, in the order in which they first appear: the trees were fitted on these; figures are of the others. */
export function fittedHalf<T extends { readonly scene: string }>(pictures: readonly T[]): readonly T[] {
  const scenes = [...new Set(pictures.map(({ scene }) => scene))];
  return pictures.filter(({ scene }) => scenes.indexOf(scene) % 2 === 0);
}
