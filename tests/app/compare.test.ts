import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { compare } from '#app/compare.ts';
import { openWorld } from '#outside/openWorld.ts';
import { demoFolder } from '../demo/demoCopy.ts';

interface Truth {
  readonly name: string;
  /** Parts that are new since the frame before: left, top, width and height in fractions, from the scene's geometry. */
  readonly fresh?: readonly { readonly what: string; readonly box: readonly [number, number, number, number] }[];
}

const truths: Truth[] = JSON.parse(readFileSync(path.resolve(demoFolder, '../scenes/truth.json'), 'utf8'));
const world = openWorld();
const photos = world.openFolder(path.join(demoFolder, 'photos'));

async function comparison(earlier: string, later: string) {
  return compare(await photos, earlier, later, world);
}

describe('compare', () => {
  it.each([
    ['20261003_192202.jpg', '20261003_194322.jpg', ['X2', 'X3']],
    ['20261003_194322.jpg', '20261003_200451.jpg', ['C1']],
  ])('rings what is new between %s and %s', async (earlier, later, parts) => {
    const { alignment, changes } = await comparison(earlier, later);
    expect(alignment?.confidence).toBeGreaterThan(0.5);
    const fresh = truths.find(({ name }) => name === later)?.fresh ?? [];
    for (const part of parts) {
      const [x = 0, y = 0, width = 0, height = 0] = fresh.find(({ what }) => what === part)?.box ?? [];
      const centre = { x: x + width / 2, y: y + height / 2 };
      const ringed = changes?.some(
        ({ inSecond: box }) =>
          box !== null &&
          Math.abs(box.x + box.width / 2 - centre.x) < box.width / 2 + 0.02 &&
          Math.abs(box.y + box.height / 2 - centre.y) < box.height / 2 + 0.02,
      );
      expect(ringed, part).toBe(true);
    }
    expect(changes?.length).toBeLessThanOrEqual(6);
  });

  it('finds nothing new between two frames of one burst', async () => {
    const { alignment, changes } = await comparison('IMG_2050.jpg', 'IMG_2051.jpg');
    expect(alignment?.confidence).toBeGreaterThan(0.8);
    expect(changes).toEqual([]);
  });

  it('lays nothing over a picture of something else', async () => {
    expect(await comparison('IMG_2041.jpg', 'IMG_2079.jpg')).toEqual({ alignment: null });
  });

  it('says which files it could not read', async () => {
    await expect(comparison('IMG_2041.jpg', '../parts.csv')).rejects.toThrow();
  });
});
