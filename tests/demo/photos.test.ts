import { spawnSync } from 'node:child_process';
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { openBuild } from '#app/openBuild.ts';
import type { Shot } from '#core/shot.ts';
import { openWorld } from '#outside/openWorld.ts';
import { temporaryFolder } from '../outside/temporaryFolder.ts';
import { demoFolder } from './demoCopy.ts';

const scenes = path.resolve(demoFolder, '../scenes');
const photos = path.join(demoFolder, 'photos');

interface FrameTruth {
  readonly name: string;
  readonly taken: string;
  readonly focus: 'sharp' | 'soft';
  readonly burst: { readonly name: string; readonly best: boolean } | null;
  readonly position: readonly [latitude: number, longitude: number] | null;
}

let truth: FrameTruth[];
let guide: string;
let shots: readonly Shot[];
beforeAll(async () => {
  truth = JSON.parse(await readFile(path.join(scenes, 'truth.json'), 'utf8'));
  guide = await readFile(path.join(demoFolder, 'guide.md'), 'utf8');
  const world = openWorld();
  const { build, pictures } = await openBuild(await world.openFolder(demoFolder), world, { shots: 'all' });
  await pictures.close();
  shots = build.shots;
});

describe('what is known of the photos of the demo', () => {
  it('is what the scenes say today', async () => {
    const to = path.join(await temporaryFolder(), 'truth.json');
    const { stderr } = spawnSync(process.execPath, [path.join(scenes, 'writeTruth.mjs'), '--to', to], {
      encoding: 'utf8',
    });
    expect(stderr.slice(-2000)).toBe('');
    expect(JSON.parse(await readFile(to, 'utf8'))).toEqual(truth);
  });

  it('is known of every photo, in the order in which the cameras took them', async () => {
    expect((await readdir(photos)).sort()).toEqual(truth.map(({ name }) => name).sort());
    const taken = new Map(shots.map((shot) => [path.basename(shot.path), shot.takenAt?.slice(0, 19)]));
    expect(truth.map(({ name }) => taken.get(name))).toEqual(truth.map((frame) => frame.taken));
  });

  it('names one best of each burst, which is sharp, and the guide shows no other of it', () => {
    const bursts = new Map<string, FrameTruth[]>();
    for (const frame of truth) {
      if (frame.burst !== null) bursts.set(frame.burst.name, [...(bursts.get(frame.burst.name) ?? []), frame]);
    }
    expect([...bursts.values()].filter((burst) => burst.length > 2).length).toBeGreaterThanOrEqual(4);
    for (const [name, burst] of bursts) {
      const best = burst.filter((frame) => frame.burst?.best);
      expect(best, name).toHaveLength(1);
      expect(best[0]?.focus, name).toBe('sharp');
      const shown = burst.filter((frame) => guide.includes(`(photos/${frame.name} `));
      if (shown.length > 0) expect(shown, name).toEqual(best);
    }
  });
});

describe('the photos of the demo', () => {
  it('weigh what a repository can bear', async () => {
    const sizes = await Promise.all(
      (await readdir(photos)).map(async (name) => (await stat(path.join(photos, name))).size),
    );
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(14e6);
  });

  it('give away a position in two, far from any land', () => {
    const placed = truth.filter((frame) => frame.position !== null);
    expect(placed).toHaveLength(2);
    expect(shots.filter(({ leaks }) => leaks.position).map((shot) => path.basename(shot.path))).toEqual(
      placed.map(({ name }) => name),
    );
    // In the middle of the South Pacific.
    for (const { position } of placed) {
      expect(position?.[0]).toBeCloseTo(-41.2, 1);
      expect(position?.[1]).toBeCloseTo(-112.48, 1);
    }
  });
});
