import { spawnSync } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Box, type FrameTruth, missing, type Pixels, readPixels, readTruth, render } from './renderSet.ts';

const corners = ['red', 'green', 'blue', 'yellow'] as const;
const sets = path.join(import.meta.dirname, 'scenes');
let scratch: string;
beforeAll(async () => {
  scratch = await mkdtemp(path.join(tmpdir(), 'twicebuilt-scenes-'));
});
afterAll(() => rm(scratch, { recursive: true, force: true }));

describe('the photos of the demo', () => {
  it('has the programs that render them', () => {
    if (process.env.CI !== undefined) expect(missing).toEqual([]);
  });

  it.skipIf(missing.length > 0).each(['20261003_185640', 'IMG_2067'])(
    'come out the same, byte for byte, when %s is rendered again',
    async (name) => {
      const photos: Buffer[] = [];
      for (const turn of ['first', 'second']) {
        const folder = path.join(scratch, turn);
        render(folder, ['--only', name]);
        photos.push(await readFile(path.join(folder, `${name}.jpg`)));
      }
      expect(photos[0]?.equals(photos[1] ?? Buffer.alloc(0))).toBe(true);
      expect(photos[0]?.length).toBeGreaterThan(5_000);
    },
  );
});

describe.skipIf(missing.length > 0)('what is known of a frame', () => {
  let truth: FrameTruth[];
  let folder: string;
  beforeAll(async () => {
    folder = path.join(scratch, 'marks');
    const set = path.join(sets, 'marks.json');
    render(folder, ['--set', set]);
    truth = await readTruth(set, path.join(folder, 'truth.json'));
  });

  // POV-Ray is the witness: it puts balls on the corners and a cube on the board by its own camera and its own turns.
  it.each([
    ['marks_1', corners, 'component side'],
    ['marks_2', corners, 'component side'],
    ['marks_3', corners, 'component side'],
    ['marks_4', ['yellow', 'blue', 'green', 'red'], 'underside'],
  ] as const)('puts the corners of the board where %s shows them, clockwise', async (name, colours, side) => {
    const pixels = await readPixels(path.join(folder, `${name}.jpg`));
    const board = truth.find((frame) => frame.name === `${name}.jpg`)?.board;
    expect(board?.side).toBe(side);
    const found = colours.map((colour) => middleOf(pixels, isColour[colour]));
    const told = board?.corners?.map(([x, y]) => [x * pixels.width, y * pixels.height]) ?? [];
    expect(told).toHaveLength(4);
    for (const [n, [x, y]] of found.entries()) {
      expect(Math.hypot(x - (told[n]?.[0] ?? 0), y - (told[n]?.[1] ?? 0)), `${colours[n]} in ${name}`).toBeLessThan(
        1.5,
      );
    }
  });

  it('is of a camera that is aimed as its frame says: to the right, upwards, clockwise', async () => {
    const seen = async (name: string) => {
      const pixels = await readPixels(path.join(folder, `${name}.jpg`));
      const [red, green, blue, yellow] = corners.map((colour) => middleOf(pixels, isColour[colour]));
      if (!red || !green || !blue || !yellow) throw new Error(`${name} lacks a mark.`);
      const middle = [0, 1].map((k) => ((red[k] ?? 0) + (green[k] ?? 0) + (blue[k] ?? 0) + (yellow[k] ?? 0)) / 4);
      return { x: middle[0] ?? 0, y: middle[1] ?? 0, edge: Math.atan2(green[1] - red[1], green[0] - red[0]) };
    };
    const straight = await seen('marks_1');
    // A pinhole whose picture is 36° wide: what lies near its middle moves by the tangent of the turn.
    const focal = 200 / Math.tan(Math.PI / 10);
    const moved = (degrees: number) => focal * Math.tan((degrees * Math.PI) / 180);
    expect((await seen('marks_pan')).x - straight.x).toBeCloseTo(-moved(4), -1);
    expect((await seen('marks_tilt')).y - straight.y).toBeCloseTo(moved(3), -1);
    expect((((await seen('marks_roll')).edge - straight.edge) * 180) / Math.PI).toBeCloseTo(-9, 0);
  });

  it.each(['marks_1', 'marks_2', 'marks_3'])('puts the box round the subject of %s', async (name) => {
    const pixels = await readPixels(path.join(folder, `${name}.jpg`));
    const box = truth.find((frame) => frame.name === `${name}.jpg`)?.subject.box ?? [0, 0, 0, 0];
    const found = boundsOf(pixels, (r, g, b) => r > 110 && g < 80 && b > 110);
    const told = [box[0] * pixels.width, box[1] * pixels.height, box[2] * pixels.width, box[3] * pixels.height];
    for (const k of [0, 1, 2, 3]) expect(Math.abs((found[k] ?? 0) - (told[k] ?? 0)), `side ${k}`).toBeLessThan(2.5);
  });
});

describe.skipIf(missing.length > 0).each(['plantWatch', 'nightButton', 'electronicDie'])(
  'the small build %s',
  (name) => {
    let truth: FrameTruth[];
    let folder: string;
    const pixelsOf = (frame: FrameTruth) => readPixels(path.join(folder, frame.name));
    beforeAll(async () => {
      folder = path.join(scratch, name);
      const set = path.join(sets, `${name}.json`);
      render(folder, ['--set', set]);
      truth = await readTruth(set, path.join(folder, 'truth.json'));
    });

    it('is rendered frame for frame, with the time that its camera wrote', () => {
      const { stdout } = spawnSync(
        'exiftool',
        ['-j', '-ext', 'jpg', '-DateTimeOriginal', '-d', '%Y-%m-%dT%H:%M:%S', folder],
        {
          encoding: 'utf8',
        },
      );
      const taken: { SourceFile: string; DateTimeOriginal: string }[] = JSON.parse(stdout);
      const written = taken.map((each) => [path.basename(each.SourceFile), each.DateTimeOriginal]).sort();
      expect(written).toEqual(truth.map((frame) => [frame.name, frame.taken]).sort());
    });

    it('is sharp and light where its truth says so', async () => {
      for (const burst of new Set(truth.flatMap((frame) => frame.burst?.name ?? []))) {
        const frames = truth.filter((frame) => frame.burst?.name === burst);
        const best = frames.filter((frame) => frame.burst?.best);
        expect(best).toHaveLength(1);
        const [model] = best as [FrameTruth];
        const [edges, light] = measure(await pixelsOf(model), model.subject.box);
        for (const frame of frames.filter((each) => each !== model)) {
          const [edgesHere, lightHere] = measure(await pixelsOf(frame), frame.subject.box);
          if (frame.focus === 'soft') expect(edgesHere, `${frame.name} is soft`).toBeLessThan(0.8 * edges);
          if (frame.exposure < -1) expect(lightHere, `${frame.name} is dark`).toBeLessThan(0.75 * light);
          if (frame.focus === 'sharp') expect(edgesHere, `${frame.name} is sharp`).toBeGreaterThan(0.85 * edges);
        }
      }
    });

    it('changes most where its truth puts what is new', async () => {
      const steady = truth.filter((frame) => frame.fresh !== undefined && frame.board?.side === 'component side');
      const first = steady.filter((frame) => frame.burst === null || frame.burst.best);
      for (const [n, frame] of first.entries()) {
        const before = first[n - 1];
        if (before === undefined || frame.fresh?.length === 0) continue;
        const change = difference(await pixelsOf(before), await pixelsOf(frame));
        for (const { what, box } of frame.fresh ?? []) {
          expect(meanIn(change, box), `${what} in ${frame.name}`).toBeGreaterThan(3 * meanIn(change, [0, 0, 1, 1]));
        }
      }
    });
  },
);

type IsColour = (r: number, g: number, b: number) => boolean;

const isColour: Record<'red' | 'green' | 'blue' | 'yellow', IsColour> = {
  red: (r, g, b) => r > 150 && g < 90 && b < 90,
  green: (r, g, b) => g > 150 && r < 110 && b < 110,
  blue: (r, g, b) => b > 130 && r < 90 && g < 90,
  yellow: (r, g, b) => r > 150 && g > 150 && b < 110,
};

function placesOf({ width, height, data }: Pixels, is: IsColour): [number, number][] {
  const places: [number, number][] = [];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = (y * width + x) * 3;
      if (is(data[i] ?? 0, data[i + 1] ?? 0, data[i + 2] ?? 0)) places.push([x + 0.5, y + 0.5]);
    }
  }
  return places;
}

function middleOf(pixels: Pixels, is: IsColour): [number, number] {
  const places = placesOf(pixels, is);
  const sum = (k: 0 | 1) => places.reduce((total, place) => total + place[k], 0) / places.length;
  return [sum(0), sum(1)];
}

function boundsOf(pixels: Pixels, is: IsColour): number[] {
  const places = placesOf(pixels, is);
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs) - 0.5, Math.min(...ys) - 0.5];
  return [left, top, Math.max(...xs) + 0.5 - left, Math.max(...ys) + 0.5 - top];
}

/** Mean step of brightness from one pixel to the next, as a share of the mean brightness, and that brightness, in a box. */
function measure(pixels: Pixels, box: Box): [number, number] {
  const { width, data } = pixels;
  let steps = 0;
  let sum = 0;
  let count = 0;
  for (const i of pixelsIn(pixels, box)) {
    const here = data[i * 3 + 1] ?? 0;
    steps += Math.abs(here - (data[i * 3 + 4] ?? here)) + Math.abs(here - (data[(i + width) * 3 + 1] ?? here));
    sum += here;
    count++;
  }
  return [steps / sum, sum / count];
}

function difference(a: Pixels, b: Pixels): Pixels {
  return { ...a, data: a.data.map((v, i) => Math.abs(v - (b.data[i] ?? 0))) as Buffer };
}

function meanIn(pixels: Pixels, box: Box): number {
  const places = pixelsIn(pixels, box);
  return places.reduce((sum, i) => sum + (pixels.data[i * 3 + 1] ?? 0), 0) / places.length;
}

function pixelsIn({ width, height }: Pixels, [left, top, across, down]: Box): number[] {
  const places: number[] = [];
  for (let y = Math.floor(top * height); y < (top + down) * height - 1; y++) {
    for (let x = Math.floor(left * width); x < (left + across) * width - 1; x++) places.push(y * width + x);
  }
  return places;
}
