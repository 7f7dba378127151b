import { spawnSync } from 'node:child_process';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { adopt } from '#app/adopt.ts';
import { publish } from '#app/publish.ts';
import { openWorld } from '#outside/openWorld.ts';
import { everythingIn, temporaryFolder } from '../outside/temporaryFolder.ts';

const script = path.resolve(import.meta.dirname, '../../demo/scenes/writeHeap.mjs');
const world = openWorld({ now: () => '2026-11-25T12:00:00Z' });
const password = 'eelgrass-at-ebb-71';

async function writeHeap(): Promise<string> {
  const folder = await temporaryFolder();
  const { status, stderr } = spawnSync(process.execPath, [script, folder], { encoding: 'utf8' });
  expect(stderr.slice(-2000)).toBe('');
  expect(status).toBe(0);
  return folder;
}

describe('the heap that the demo was made from', () => {
  it('comes out the same each time, and never over what lies there', async () => {
    const [first, second] = [await writeHeap(), await writeHeap()];
    const files = await everythingIn(first);
    expect(await everythingIn(second)).toEqual(files);
    expect(Object.keys(files)).not.toContain('twicebuilt.yaml');
    const again = spawnSync(process.execPath, [script, first], { encoding: 'utf8' });
    expect(again.status).not.toBe(0);
    expect(again.stderr).toContain('is not empty');
  });

  it('holds some pictures twice, under names of other cameras', async () => {
    const files = await everythingIn(await writeHeap());
    const pictures = Object.entries(files).filter(([name]) => /\.jpe?g$/i.test(name));
    expect(new Set(pictures.map(([, hash]) => hash)).size).toBeLessThan(pictures.length);
    expect(pictures.filter(([name]) => name.includes('IMG_'))).toEqual([]);
  });

  it('is adopted: each list, the code and the pictures are found by what they hold', async () => {
    const root = await writeHeap();
    const { roles, leaks, unplaced } = await adopt(await world.openFolder(root), world);
    expect(Object.fromEntries(roles.map(({ role, places }) => [role, places]))).toMatchObject({
      parts: ['stuff ordered.csv'],
      wiring: ['cables.tsv'],
      code: ['code/lamp_final2/'],
      design: ['print/'],
      shots: expect.arrayContaining(['phone backup/', 'to send/']),
    });
    expect(unplaced.map((file) => file.path)).toEqual(['notes.txt']);
    expect(leaks.secrets).toBeGreaterThan(0);
    expect(leaks.positions).toBeGreaterThanOrEqual(2);
  });
});

describe('what is published of the heap', () => {
  it('lacks the password, wherever it stood', async () => {
    const root = await writeHeap();
    expect(await readFile(path.join(root, 'code/lamp_final2/lamp_final2.ino'), 'utf8')).toContain(password);
    // Without instructions nothing is published; these say the password once more.
    await writeFile(
      path.join(root, 'guide.md'),
      `# Lamp\n\n## Load the code\n- Code: code/lamp_final2/lamp_final2.ino → U1\n\nThe network's word is ${password}.\n`,
    );
    const out = await temporaryFolder();
    const { outputs, withheld } = await publish(
      await world.openFolder(root),
      await world.openOutput(path.join(out, 'site')),
      world,
    );
    const texts = await textsBelow(outputs[0]?.path ?? '');
    expect(texts).not.toContain(password);
    expect(texts).toContain('WITHHELD');
    expect(withheld.map(({ file }) => file)).toContain('code/lamp_final2/lamp_final2.ino');
  });
});

async function textsBelow(folder: string): Promise<string> {
  const names = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = names.filter((entry) => entry.isFile()).map((entry) => path.join(entry.parentPath, entry.name));
  return (await Promise.all(files.map((file) => readFile(file, 'latin1')))).join('\n');
}
