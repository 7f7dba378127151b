import sharp from 'sharp';
import { applyHomography } from '#imaging/geometry/applyHomography.ts';
import type { Homography } from '#imaging/geometry/homography.ts';
import { homographyOfFour } from '#imaging/geometry/homographyOfFour.ts';
import { invertHomography } from '#imaging/geometry/invertHomography.ts';
import { seededRandom } from '#imaging/geometry/seededRandom.ts';
import { warpPicture } from '#imaging/geometry/warpPicture.ts';
import type { ImageBox } from '#imaging/likeness/regionsOf.ts';
import { linearOf, type Picture } from '#imaging/pixels/picture.ts';
import { readPhoto } from './readPhoto.ts';

/**
 * A photo as if it had been taken again from elsewhere: another view, light, noise and coding, cut so that all of it was
 * in the photo, and perhaps a banded part laid on it. `view` takes points of the new picture to the photo; `box` is round
 * the part in the new picture.
 */
export async function photographedAgain(photo: Picture, seed: number, withPart: boolean) {
  const random = seededRandom(6271 * (seed + 1));
  const about = (spread: number) => spread * (2 * random() - 1);
  const width = Math.round(photo.width * 0.86);
  const height = Math.round(photo.height * 0.86);
  const view = viewInside(photo, width, height, random);
  const part = withPart ? partAt(photo, random) : null;
  const { picture } = warpPicture(part ? part.picture : photo, view, width, height);
  const ev = 2 ** about(0.8);
  const gains = [ev * (1 + about(0.1)), ev, ev * (1 + about(0.14))];
  const [fall, from] = [about(0.3), about(3)];
  const rgb = new Uint8Array(picture.rgb.length);
  for (let i = 0; i < rgb.length; i++) {
    const at = Math.floor(i / 3);
    const [u, v] = [(at % width) / width - 0.5, Math.floor(at / width) / height - 0.5];
    const light = (gains[i % 3] ?? 1) * (1 + fall * (u * Math.cos(from) + v * Math.sin(from)));
    const linear = (linearOf[picture.rgb[i] ?? 0] ?? 0) * light;
    const grain = 2.5 * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    rgb[i] = Math.max(0, Math.min(255, Math.round(255 * Math.max(0, linear) ** (1 / 2.2) + grain)));
  }
  const jpeg = await sharp(rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 82 })
    .toBuffer();
  const back = invertHomography(view);
  const box = part && back ? boxThrough(back, part.box) : null;
  return { picture: await readPhoto(jpeg, Math.max(width, height)), view, box };
}

/** A turned and tilted rectangle inside the photo. */
function viewInside(photo: Picture, width: number, height: number, random: () => number): Homography {
  const about = (spread: number) => spread * (2 * random() - 1);
  const turn = about(0.09);
  const corner = (x: number, y: number) => {
    const [u, v] = [x * photo.width * 0.4, y * photo.height * 0.4];
    return {
      column: photo.width / 2 + u * Math.cos(turn) - v * Math.sin(turn) + about(0.02 * photo.width),
      row: photo.height / 2 + u * Math.sin(turn) + v * Math.cos(turn) + about(0.02 * photo.height),
    };
  };
  const edges = [
    { column: 0, row: 0 },
    { column: width - 1, row: 0 },
    { column: width - 1, row: height - 1 },
    { column: 0, row: height - 1 },
  ] as const;
  const view = homographyOfFour(edges, [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]);
  if (!view) throw new Error('expected four corners, received a line');
  return view;
}

/** The photo with a banded part on it, 5 to 9 % of its width, somewhere in its middle. */
function partAt(photo: Picture, random: () => number): { picture: Picture; box: ImageBox } {
  const width = Math.round(photo.width * (0.05 + 0.04 * random()));
  const height = Math.round(width * (0.4 + 0.8 * random()));
  const column = Math.round(photo.width * (0.25 + 0.42 * random()));
  const row = Math.round(photo.height * (0.25 + 0.42 * random()));
  const colours = [
    [40, 40, 44, 190, 190, 186],
    [200, 170, 120, 110, 50, 30],
    [36, 60, 140, 210, 210, 205],
    [205, 150, 40, 100, 60, 10],
  ] as const;
  const colour = colours[Math.floor(random() * colours.length)] ?? colours[0];
  const rgb = photo.rgb.slice();
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const marked = (x / width) % 0.25 < 0.07 && y > 0.1 * height && y < 0.9 * height;
      const shade = 1.1 - (0.35 * y) / height;
      for (const channel of [0, 1, 2] as const) {
        const code = marked ? colour[channel + 3] : colour[channel];
        rgb[3 * ((row + y) * photo.width + column + x) + channel] = Math.min(255, (code ?? 0) * shade);
      }
    }
  }
  return { picture: { ...photo, rgb }, box: { column, row, width, height } };
}

function boxThrough(view: Homography, { column, row, width, height }: ImageBox): ImageBox {
  const points = [column, column + width].flatMap((x) =>
    [row, row + height].map((y) => applyHomography(view, { column: x, row: y })),
  );
  const columns = points.map((point) => point.column);
  const rows = points.map((point) => point.row);
  const [left, top] = [Math.min(...columns), Math.min(...rows)];
  return { column: left, row: top, width: Math.max(...columns) - left, height: Math.max(...rows) - top };
}
