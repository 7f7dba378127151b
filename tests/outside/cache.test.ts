import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { CachePort } from '#app/ports.ts';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { openCache } from '#outside/cache/openCache.ts';
import { openFolder } from '#outside/files/openFolder.ts';
import { faultyFileSystem } from './faultyFileSystem.ts';
import { everythingIn, temporaryFolder } from './temporaryFolder.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const text = async (cache: CachePort, key: string) => {
  const data = await cache.get(key);
  return data && new TextDecoder().decode(data);
};

let root: string;
let home: string;

beforeEach(async () => {
  root = await temporaryFolder();
  home = await temporaryFolder();
  vi.stubEnv('XDG_CACHE_HOME', home);
  await writeFile(path.join(root, 'guide.md'), 'mine');
});

afterEach(() => {
  vi.unstubAllEnvs();
});

const entriesOf = async (folder: string) =>
  (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
    .map((entry) => path.join(entry.parentPath, entry.name));

describe.each([true, false])('a cache (adopted: %s)', (adopted) => {
  const place = () => (adopted ? path.join(root, '.twicebuilt') : home);

  test('gives back what was put under the same key, and nothing under another', async () => {
    const cache = await openCache(await openFolder(root), adopted);
    await cache.put('a', bytes('one'));
    await cache.put('b', bytes(''));
    await cache.put('a', bytes('two'));
    expect([await text(cache, 'a'), await text(cache, 'b'), await text(cache, 'c')]).toEqual(['two', '', null]);
    const again = await openCache(await openFolder(root), adopted);
    expect(await text(again, 'a')).toBe('two');
  });

  test('reads a damaged entry, or one of another key, as nothing', async () => {
    const cache = await openCache(await openFolder(root), adopted);
    await cache.put('a', bytes('one'));
    const [file = ''] = (await entriesOf(place())).filter((name) => !name.endsWith('guide.md'));
    const entry = await readFile(file);
    for (let i = 0; i < entry.length; i++) {
      const damaged = Buffer.from(entry);
      damaged[i] = (damaged[i] ?? 0) ^ 1;
      await writeFile(file, damaged);
      expect(await cache.get('a'), `byte ${i}`).toBeNull();
    }
    for (let length = 0; length < entry.length; length++) {
      await writeFile(file, entry.subarray(0, length));
      expect(await cache.get('a'), `${length} bytes`).toBeNull();
    }
    await cache.put('b', bytes('other'));
    const [other = ''] = (await entriesOf(place())).filter((name) => name !== file);
    await writeFile(file, await readFile(other));
    expect(await cache.get('a')).toBeNull();
  });
});

test('a folder that was not adopted gets nothing written into it', async () => {
  const before = await everythingIn(root);
  const cache = await openCache(await openFolder(root), false);
  await cache.put('a', bytes('one'));
  expect(await everythingIn(root)).toEqual(before);
  expect((await entriesOf(home)).length).toBe(1);
});

test('two folders never share a cache in the user’s cache folder', async () => {
  const other = await temporaryFolder();
  await (await openCache(await openFolder(root), false)).put('a', bytes('one'));
  expect(await text(await openCache(await openFolder(other), false), 'a')).toBeNull();
});

test('an adopted folder keeps its cache out of version control', async () => {
  await (await openCache(await openFolder(root), true)).put('a', bytes('one'));
  expect(await readFile(path.join(root, '.twicebuilt/.gitignore'), 'utf8')).toBe('*\n');
});

test.each(['ENOSPC', 'EROFS', 'EACCES', 'EIO'] as const)('%s while it is written stops nothing', async (how) => {
  const before = await everythingIn(root);
  for (let nth = 1; nth < 4; nth++) {
    const counts = (call: string) => ['makeFolder', 'open to create', 'write'].includes(call);
    const faulty = faultyFileSystem({ nth, how, counts });
    const cache = await openCache(await openFolder(root, faulty.system), true);
    await cache.put('a', bytes('one'));
    expect(faulty.fired()).not.toBeNull();
    expect(await cache.get('a')).toBeNull();
    expect(await everythingIn(root)).toMatchObject(before);
  }
});

test('a cache folder that cannot be made leaves the cache in memory', async () => {
  await writeFile(path.join(home, 'file'), '');
  vi.stubEnv('XDG_CACHE_HOME', path.join(home, 'file'));
  const cache = await openCache(await openFolder(root), false);
  await cache.put('a', bytes('one'));
  expect(await text(cache, 'a')).toBe('one');
});

test('a cache in memory keeps its own copy of what it is given', async () => {
  const cache = memoryCache();
  const data = Buffer.from('one');
  await cache.put('a', data);
  data[0] = 0;
  const first = await cache.get('a');
  first?.fill(0);
  expect(await text(cache, 'a')).toBe('one');
  expect(await cache.get('b')).toBeNull();
});

test('a cache that somebody empties goes on', async () => {
  const cache = await openCache(await openFolder(root), true);
  await cache.put('a', bytes('one'));
  const { rm } = await import('node:fs/promises');
  await rm(path.join(root, '.twicebuilt'), { recursive: true });
  expect(await cache.get('a')).toBeNull();
  await mkdir(path.join(root, '.twicebuilt'));
  await cache.put('a', bytes('two'));
  expect(await text(cache, 'a')).toBe('two');
});
