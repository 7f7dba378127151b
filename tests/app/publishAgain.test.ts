import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { World } from '#app/ports.ts';
import { publish } from '#app/publish.ts';
import { unlessUnchanged } from '#app/unlessUnchanged.ts';
import { openWorld } from '#outside/openWorld.ts';
import { copyDemo, type DemoCopy } from '../demo/demoCopy.ts';

let demo: DemoCopy;
let out: string;
beforeEach(async () => {
  demo = await copyDemo();
  out = await mkdtemp(path.join(tmpdir(), 'twicebuilt-again-'));
});
afterEach(async () => {
  await demo.discard();
  await rm(out, { recursive: true });
});

/** Publishes unless nothing changed; answers whether it had to work. */
async function again(world: World, program = 'one', wishes: readonly unknown[] = []): Promise<boolean> {
  const [folder, output] = [await world.openFolder(demo.root), await world.openOutput(out)];
  let worked = false;
  const told = await unlessUnchanged(folder, output, { ...world, program }, wishes, async () => {
    worked = true;
    const { verdict, cleaned } = await publish(folder, output, world);
    return { told: verdict, originals: cleaned.map(({ path: file }) => file) };
  });
  expect(told).toBe('buildable');
  return worked;
}

describe('publishing again', () => {
  it('does nothing where nothing changed, and everything where something did', async () => {
    const world = openWorld({ now: () => '2026-11-25T12:00:00Z' });
    expect(await again(world)).toBe(true);
    expect(await again(world)).toBe(false);
    await demo.swap('guide.md', 'Turn the board over. Solder all six leads.', 'Turn it over. Solder all six leads.');
    expect(await again(world)).toBe(true);
    expect(await again(world)).toBe(false);
    expect(await again(world, 'another build of the program')).toBe(true);
    expect(await again(world, 'one', ['another wish'])).toBe(true);
    expect(await again(openWorld({ now: () => '2026-11-26T12:00:00Z' }))).toBe(true);
  }, 120_000);

  it('sees a picture that changed beyond its first bytes, and an output that is gone or was touched', async () => {
    const world = openWorld({ now: () => '2026-11-25T12:00:00Z' });
    await again(world);
    const photo = path.join(demo.root, 'photos/IMG_2043.jpg');
    const bytes = await readFile(photo);
    bytes[bytes.length - 100] = (bytes[bytes.length - 100] ?? 0) ^ 1;
    await writeFile(photo, bytes);
    expect(await again(world)).toBe(true);
    expect(await again(world)).toBe(false);
    await rm(path.join(out, 'site/style.css'));
    expect(await again(world)).toBe(true);
    expect(await readFile(path.join(out, 'site/style.css'), 'utf8')).toContain(':root');
  }, 120_000);

  it('encodes no picture anew for a changed caption', async () => {
    const kept: string[] = [];
    const world = openWorld({ now: () => '2026-11-25T12:00:00Z' });
    const watching: World = {
      ...world,
      openCache: async (folder, adopted) => {
        const cache = await world.openCache(folder, adopted);
        return {
          ...cache,
          put(key, data) {
            kept.push(key);
            return cache.put(key, data);
          },
        };
      },
    };
    await again(watching, 'one');
    const pictures = kept.filter((key) => !key.startsWith('told/')).length;
    expect(pictures).toBeGreaterThan(30);
    kept.length = 0;
    await demo.swap(
      'guide.md',
      'R1 is 330 Ω: orange, orange, brown, gold',
      'The bands of R1: orange, orange, brown, gold',
    );
    expect(await again(watching, 'one')).toBe(true);
    expect(kept.filter((key) => !key.startsWith('told/'))).toEqual([]);
  }, 120_000);
});
