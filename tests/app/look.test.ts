import { readFileSync } from 'node:fs';
import { cp, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lookDocument } from '#app/documents/lookDocument.ts';
import { type Looking, look } from '#app/look.ts';
import { openWorld } from '#outside/openWorld.ts';
import { demoFolder } from '../demo/demoCopy.ts';

interface Truth {
  readonly name: string;
  readonly focus: 'sharp' | 'soft';
  readonly exposure: number;
  readonly position: unknown;
  readonly burst: { readonly name?: string; readonly best?: boolean } | null;
}

const truths: Truth[] = JSON.parse(readFileSync(path.resolve(demoFolder, '../scenes/truth.json'), 'utf8'));
const world = openWorld();
let folder: string;
let looking: Looking;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'twicebuilt-look-'));
  for (const name of ['IMG_2042.jpg', 'IMG_2043.jpg', 'IMG_2044.jpg', 'IMG_2054.jpg', 'IMG_2053.jpg', 'IMG_2046.jpg']) {
    await cp(path.join(demoFolder, 'photos', name), path.join(folder, name));
  }
  await writeFile(path.join(folder, 'broken.jpg'), 'no picture');
  looking = await look(await world.openFolder(folder), null, world);
}, 60_000);
afterAll(() => rm(folder, { recursive: true }));

const shotOf = (name: string) => looking.shots.find((shot) => shot.path === name);

describe('look', () => {
  // Truth of each frame comes from the camera that made it (demo/scenes/truth.json).
  it('tells sharp frames from soft ones, and dark ones from good ones', () => {
    for (const { name, focus } of truths) {
      const shot = shotOf(name);
      if (shot !== undefined && focus === 'soft') expect(shot.measures.focus.verdict, name).not.toBe('sharp');
    }
    expect(shotOf('IMG_2043.jpg')?.measures.focus.verdict).toBe('sharp');
    expect(shotOf('IMG_2054.jpg')?.measures.exposure.verdict).toBe('dark');
    expect(shotOf('IMG_2053.jpg')?.measures.exposure.verdict).toBe('good');
  });

  it('goes on where a file is no picture, and says so', () => {
    expect(looking.leftOut.map(({ path: file }) => file)).toEqual(['broken.jpg']);
    expect(looking.shots).toHaveLength(6);
  });

  it('says that there is a position, and never which', () => {
    const document = JSON.stringify(lookDocument(looking));
    for (const { name, position } of truths) {
      const shot = shotOf(name);
      if (shot !== undefined) expect(shot.leaks.position, name).toBe(position !== null);
    }
    expect(document).not.toMatch(/latitude|longitude|GPS/i);
  });

  it('tells the same again, and writes nothing beside the pictures', async () => {
    const before = await readdir(folder);
    const again = await look(await world.openFolder(folder), null, world);
    expect(lookDocument(again)).toEqual(lookDocument(looking));
    expect(await readdir(folder)).toEqual(before);
  });
});
