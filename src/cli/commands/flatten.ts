import path from 'node:path';
import { flatten } from '#app/flatten.ts';
import type { BoardCorners, FlattenWish } from '#app/ports.ts';
import { onePlace, readArguments, UsageMistake } from '../arguments.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { type Command, jsonOption } from './command.ts';

/** Pixels of one side of a flat view; more is no photo of a board any more. */
const mostPixels = 12_000;

export const flattenCommand: Command = {
  name: 'flatten',
  usage: 'FILE --size WIDTHxHEIGHT [--corners X,Y…] --to OUT [--per-mm N] [--json]',
  title: 'show a board in a photo from straight above and true to scale',
  about: `Takes a board in a photo, by its four corners or, without them, as it is found, and writes it as if seen from straight
above, with a bar that tells the scale. What stands up from the board leans as it does in the photo. The photo stays as it is, and
a file that exists is never written over.`,
  options: [
    { flag: '--size WxH', meaning: 'width and height of the board in millimetres, such as 60x45' },
    {
      flag: '--corners …',
      meaning:
        'four points as fractions of the picture, clockwise from top left: 0.1,0.2 0.9,0.2 0.9,0.8 0.1,0.8 in quotes; without them a whole board is looked for',
    },
    { flag: '--to OUT', meaning: 'a new file, ending in .png or .jpg' },
    { flag: '--per-mm N', meaning: 'pixels for each millimetre (unless said otherwise, as many as the photo has)' },
    jsonOption,
  ],
  examples: [
    'flatten photos/IMG_2049.jpg --size 70x50 --to board.png',
    "flatten photos/IMG_2046.jpg --size 70x50 --corners '0.2,0.2 0.9,0.15 0.95,0.75 0.15,0.85' --to board.png",
  ],
  async run(words) {
    const { values, positionals } = readArguments(words, {
      size: { type: 'string' },
      corners: { type: 'string' },
      to: { type: 'string' },
      'per-mm': { type: 'string' },
      json: { type: 'boolean' },
    });
    const file = path.resolve(onePlace(positionals, 'a photo'));
    const to = path.resolve(values.to ?? missing('--to and a file to write'));
    const wish = wishOf(values, to);
    const done = await withWorld(async (world) =>
      flatten(
        await world.openFolder(path.dirname(file)),
        path.basename(file),
        await world.openOutput(path.dirname(to)),
        path.basename(to),
        world,
        wish,
      ),
    );
    if (values.json) printJson({ format: 1, ...done });
    else {
      const { width, height } = done.size;
      process.stdout.write(
        `The board of ${width} × ${height} mm from above, ${done.pixelsPerMillimetre} pixels a millimetre: ${done.to}\n`,
      );
    }
    return 0;
  },
};

interface Said {
  readonly size?: string | undefined;
  readonly corners?: string | undefined;
  readonly 'per-mm'?: string | undefined;
}

function wishOf(said: Said, to: string): FlattenWish {
  const size = /^\s*(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)\s*$/i.exec(said.size ?? missing('--size and millimetres'));
  const [width, height] = [Number(size?.[1]), Number(size?.[2])];
  if (!(width > 0 && height > 0 && width <= 2000 && height <= 2000)) {
    throw new UsageMistake(`Expected two numbers of millimetres after --size, such as 60x45; found “${said.size}”.`);
  }
  const corners = said.corners === undefined ? null : cornersOf(said.corners);
  const perMillimetre = said['per-mm'] === undefined ? null : Number(said['per-mm']);
  const side = perMillimetre === null ? 1 : perMillimetre * Math.max(width, height);
  if (perMillimetre !== null && !(perMillimetre > 0 && side >= 1 && side <= mostPixels)) {
    throw new UsageMistake(
      `Expected pixels a millimetre that make at most ${mostPixels} pixels after --per-mm; found “${said['per-mm']}”.`,
    );
  }
  return { corners, size: { width, height }, pixelsPerMillimetre: perMillimetre, format: formatOf(to) };
}

function cornersOf(said: string): BoardCorners {
  const points = said.trim().split(/\s+/).map(pointOf);
  const [a, b, c, d] = points;
  if (points.length === 4 && a && b && c && d) return [a, b, c, d];
  throw new UsageMistake(
    `Expected four points after --corners, each as two fractions such as 0.1,0.2; found “${said}”.`,
  );
}

function pointOf(words: string) {
  const [x, y, ...more] = words.split(',').map((word) => (word.trim() === '' ? Number.NaN : Number(word)));
  const isPoint = x !== undefined && y !== undefined && more.length === 0 && x >= 0 && x <= 1 && y >= 0 && y <= 1;
  return isPoint ? { x, y } : null;
}

function formatOf(to: string): FlattenWish['format'] {
  const extension = path.extname(to).toLowerCase();
  if (extension === '.png') return 'png';
  if (extension === '.jpg' || extension === '.jpeg') return 'jpeg';
  throw new UsageMistake(`Expected a file that ends in .png or .jpg after --to; found “${to}”.`);
}

function missing(what: string): never {
  throw new UsageMistake(`Expected ${what}; none was given.`);
}
