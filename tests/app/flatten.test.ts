import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { flatten } from '#app/flatten.ts';
import type { FlattenWish } from '#app/ports.ts';
import { openWorld } from '#outside/openWorld.ts';
import { demoFolder } from '../demo/demoCopy.ts';

const world = openWorld();
let out: string;
beforeAll(async () => {
  out = await mkdtemp(path.join(tmpdir(), 'twicebuilt-flat-'));
});
afterAll(() => rm(out, { recursive: true }));

// Corners of the board in the photo, from the scene's own geometry (demo/scenes/truth.json).
const [a, b, c, d] = [
  { x: 0.0927, y: 0.1753 },
  { x: 0.835, y: 0.0916 },
  { x: 0.9804, y: 0.7275 },
  { x: 0.0729, y: 0.8532 },
];
const wish: FlattenWish = {
  corners: [a, b, c, d],
  size: { width: 70, height: 50 },
  pixelsPerMillimetre: 20,
  format: 'png',
};

async function flat(to: string, asked: FlattenWish = wish) {
  const photos = await world.openFolder(path.join(demoFolder, 'photos'));
  return flatten(photos, 'IMG_2049.jpg', await world.openOutput(out), to, world, asked);
}

describe('flatten', () => {
  it('lays the board out to scale: each hole of the grid of 2.54 mm is where it is drilled', async () => {
    const done = await flat('board.png');
    expect(done).toMatchObject({ width: 1400, boardHeight: 1000, pixelsPerMillimetre: 20 });
    const { data, info } = await sharp(path.join(out, 'board.png'))
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const lightAt = (x: number, y: number) => data[Math.round(y * 20) * info.width + Math.round(x * 20)] ?? 255;
    // 24 by 18 holes in the middle of the board; the lower rows hold no lead (the board's scene, from above).
    const first = { x: (70 - 23 * 2.54) / 2, y: (50 - 17 * 2.54) / 2 };
    let dark = 0;
    for (const row of [0, 8, 9, 10, 17]) {
      for (let column = 16; column < 24; column++) {
        const [x, y] = [first.x + column * 2.54, first.y + row * 2.54];
        const ring = [-0.7, 0.7].map((off) => lightAt(x + off, y));
        if (lightAt(x, y) < 90 && ring.every((light) => light > lightAt(x, y) + 40)) dark++;
      }
    }
    expect(dark).toBeGreaterThanOrEqual(38);
  });

  it('finds a whole board by itself, within 1.5 % of its width, and says so where there is none', async () => {
    const { corners } = await flat('found.png', { ...wish, corners: null });
    for (const [i, corner] of [a, b, c, d].entries()) {
      expect(Math.hypot((corners[i]?.x ?? 9) - corner.x, (corners[i]?.y ?? 9) - corner.y)).toBeLessThan(0.015);
    }
    const photos = await world.openFolder(path.join(demoFolder, 'photos'));
    const closeUp = flatten(photos, 'IMG_2043.jpg', await world.openOutput(out), 'none.png', world, {
      ...wish,
      corners: null,
    });
    await expect(closeUp).rejects.toThrow(/No whole board/);
  });

  it('writes over nothing, and refuses corners on a line', async () => {
    await flat('once.png');
    const before = await readFile(path.join(out, 'once.png'));
    await expect(flat('once.png')).rejects.toMatchObject({ code: 'bad-request' });
    expect((await readFile(path.join(out, 'once.png'))).equals(before)).toBe(true);
    const line = { ...wish, corners: [a, { x: 0.5, y: 0.5 }, { x: 0.6, y: 0.6 }, { x: 0.7, y: 0.7 }] as const };
    await expect(flat('line.png', line)).rejects.toThrow(/lie on a line/);
  });
});
