import { symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { openWorld } from '#outside/openWorld.ts';
import { everythingIn, temporaryFolder } from './temporaryFolder.ts';

afterEach(() => {
  vi.unstubAllEnvs();
});

test('the world opens folders, caches, pictures and grammars that work together', async () => {
  const root = await temporaryFolder();
  vi.stubEnv('XDG_CACHE_HOME', await temporaryFolder());
  await writeFile(path.join(root, 'a.jpg'), 'no picture');
  const reports: unknown[] = [];
  const world = openWorld({ progress: { report: (...all) => reports.push(all) }, now: () => '2026-03-04T05:06:07Z' });
  const before = await everythingIn(root);
  const folder = await world.openFolder(root);
  const pictures = await world.openPictures(folder, await world.openCache(folder, false));
  expect(await pictures.inspect('a.jpg')).toMatchObject({ ok: false });
  await pictures.close();
  expect((await world.grammars.parse('cpp', 'int a;')).text).toBe('int a;');
  world.progress.report('Reading', 1, null);
  expect(reports).toEqual([['Reading', 1, null]]);
  expect(world.now()).toBe('2026-03-04T05:06:07Z');
  expect(await everythingIn(root)).toEqual(before);
});

test('without options the clock is that of the machine, in UTC, and progress goes nowhere', () => {
  const world = openWorld();
  expect(Math.abs(Date.parse(world.now()) - Date.now())).toBeLessThan(5000);
  expect(world.now()).toMatch(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/);
  world.progress.report('Reading', 1, 2);
});

test('an output folder is made with its parents; a file in its way is told', async () => {
  const root = await temporaryFolder();
  const world = openWorld();
  const output = await world.openOutput(path.join(root, 'a/b/c'));
  expect(output.root).toBe(path.join(root, 'a/b/c'));
  await world.openOutput(path.join(root, 'a/b/c'));
  await writeFile(path.join(root, 'file'), '');
  await expect(world.openOutput(path.join(root, 'file'))).rejects.toMatchObject({ code: 'not-a-folder' });
  await expect(world.openOutput(path.join(root, 'file/x'))).rejects.toMatchObject({ name: 'Failure' });
});

test('a path is made absolute through links, as far as it exists', async () => {
  const root = await temporaryFolder();
  const elsewhere = await temporaryFolder();
  await symlink(elsewhere, path.join(root, 'link'));
  const { absolute } = openWorld();
  expect(await absolute(path.join(root, 'link/new/../deep/file'))).toBe(path.join(elsewhere, 'deep/file'));
  expect(await absolute('.')).toBe(process.cwd());
});
