import { spawnSync } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = path.resolve(import.meta.dirname, '../..');
const missing = ['povray', 'exiftool'].filter((program) => spawnSync('which', [program]).status !== 0);
let scratch: string;
beforeAll(async () => {
  scratch = await mkdtemp(path.join(tmpdir(), 'twicebuilt-scenes-'));
});
afterAll(() => rm(scratch, { recursive: true, force: true }));

describe('the photos of the demo', () => {
  it('has the programs that render them', () => {
    if (process.env.CI !== undefined) expect(missing).toEqual([]);
  });

  it.skipIf(missing.length > 0).each(['IMG_2043', 'IMG_2067'])(
    'come out the same, byte for byte, when %s is rendered again',
    async (name) => {
      const photos: Buffer[] = [];
      for (const turn of ['first', 'second']) {
        const keep = path.join(scratch, turn);
        const script = path.join(root, 'demo/scenes/render.mjs');
        const { status, stderr } = spawnSync(process.execPath, [script, '--only', name, '--preview', '--keep', keep], {
          encoding: 'utf8',
        });
        expect(stderr.slice(-2000), `${name}: ${status}`).toBe('');
        photos.push(await readFile(path.join(keep, `${name}.jpg`)));
      }
      expect(photos[0]?.equals(photos[1] ?? Buffer.alloc(0))).toBe(true);
      expect(photos[0]?.length).toBeGreaterThan(5_000);
    },
  );
});
