import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { publish } from '#app/publish.ts';
import { openWorld } from '#outside/openWorld.ts';

let root: string;
beforeAll(async () => {
  root = await mkdtemp(path.join(tmpdir(), 'twicebuilt-files-'));
});
afterAll(async () => {
  await rm(root, { recursive: true, force: true });
});

describe('Files that come with a guide', () => {
  it('are given out where they are text or triangles, without what could name anybody', async () => {
    const files = {
      'build/guide.md': '# Night light\n\n## Fit the lamp\n\nPush D1 in.\n',
      'build/parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
      'build/models/lid.scad': '// lid, printed face down\ncube([40, 30, 2]);\n',
      'build/models/pin.stl': oneTriangle('made by Marren on a bench in Sallowmouth'),
      'build/models/case.step': 'ISO-10303-21;\nFILE_NAME("case", "", ("Marren"));\n',
    };
    for (const [file, content] of Object.entries(files)) {
      await mkdir(path.dirname(path.join(root, file)), { recursive: true });
      await writeFile(path.join(root, file), content);
    }
    const world = openWorld({ now: () => '2026-11-25T12:00:00Z' });
    await publish(
      await world.openFolder(path.join(root, 'build')),
      await world.openOutput(path.join(root, 'out')),
      world,
    );
    const beside = path.join(root, 'out/site/files/models');
    expect((await readdir(beside)).sort()).toEqual(['lid.scad', 'pin.stl']);
    expect(await readFile(path.join(beside, 'lid.scad'), 'utf8')).toBe(files['build/models/lid.scad']);
    const solid = await readFile(path.join(beside, 'pin.stl'));
    expect([...solid.subarray(0, 80)].every((byte) => byte === 0)).toBe(true);
    expect(solid.subarray(80)).toEqual(files['build/models/pin.stl'].subarray(80));
    expect(await readFile(path.join(root, 'out/site/index.html'), 'utf8')).toMatch(
      /case\.step[\s\S]{0,200}Not given out/,
    );
  });
});

/** Binary STL: 80 bytes of header, a count, and 50 bytes a triangle. */
function oneTriangle(header: string): Buffer {
  const bytes = Buffer.alloc(84 + 50, 7);
  bytes.fill(0, 0, 84);
  bytes.write(header, 'ascii');
  bytes.writeUInt32LE(1, 80);
  return bytes;
}
