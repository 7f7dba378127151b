import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { FolderPort } from '#app/ports.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { hashOf, openFolder } from '#outside/files/openFolder.ts';
import { temporaryFolder } from './temporaryFolder.ts';

type Files = Record<string, string>;

async function diskFolder(files: Files): Promise<FolderPort> {
  const root = await temporaryFolder();
  for (const [name, text] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(root, name)), { recursive: true });
    await writeFile(path.join(root, name), text);
  }
  return openFolder(root);
}

const makers: [string, (files: Files) => Promise<FolderPort>][] = [
  ['on a disk', diskFolder],
  ['in memory', async (files) => memoryFolder(files)],
];

const bytes = (text: string) => new TextEncoder().encode(text);
const text = async (folder: FolderPort, file: string) => new TextDecoder().decode(await folder.read(file));
const all = () => null;

describe.each(makers)('a folder %s', (_, make) => {
  test('lists files by code points of their whole paths', async () => {
    // By code units the bear (U+1F43B) would come before the full-width letter (U+FF21).
    const names = ['a/b', 'a-b', 'a.b', 'a', 'B', 'ä', '\u{1f43b}', '\uff21'].map((name) => `${name}.txt`);
    const folder = await make(Object.fromEntries([...names, 'a/b/c.txt'].map((name) => [name, 'x'])));
    const { files, leftOut } = await folder.walk(all);
    expect(files.map((file) => file.path)).toEqual([
      'B.txt',
      'a-b.txt',
      'a.b.txt',
      'a.txt',
      'a/b.txt',
      'a/b/c.txt',
      'ä.txt',
      '\uff21.txt',
      '\u{1f43b}.txt',
    ]);
    expect(leftOut).toEqual([]);
  });

  test('tells sizes in bytes and says why files and folders are passed over', async () => {
    const folder = await make({ 'guide.md': 'ohm Ω', 'lib/deep/x.h': '', 'lib/y.h': '', '.env': '' });
    const { files, leftOut } = await folder.walk((path, isFolder) => {
      if (isFolder) return path === 'lib' ? 'of others' : null;
      return path === '.env' ? 'hidden' : null;
    });
    expect(files).toEqual([{ path: 'guide.md', bytes: 6 }]);
    expect(leftOut).toEqual([
      { path: '.env', why: 'hidden' },
      { path: 'lib', why: 'of others' },
    ]);
  });

  test('reads what was written, in new folders too, and hashes it by SHA-256', async () => {
    const folder = await make({});
    await folder.write('out/deep/a b.txt', bytes('abc'));
    expect(await text(folder, 'out/deep/a b.txt')).toBe('abc');
    expect(await text(folder, 'out/deep/a b.txt')).toBe('abc');
    expect(new TextDecoder().decode(await folder.readHead('out/deep/a b.txt', 2))).toBe('ab');
    expect((await folder.readHead('out/deep/a b.txt', 99)).length).toBe(3);
    // FIPS 180-4, example of one block.
    expect(await folder.hash('out/deep/a b.txt')).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
    expect(await folder.exists('out/deep')).toBe(true);
    expect(await folder.exists('out/other')).toBe(false);
  });

  test('refuses a write whose base is not what is there', async () => {
    const folder = await make({ 'guide.md': 'old' });
    const changed = { name: 'Failure', code: 'file-changed' };
    await expect(folder.write('guide.md', bytes('new'), { base: null })).rejects.toMatchObject(changed);
    await expect(folder.write('guide.md', bytes('new'), { base: hashOf(bytes('x')) })).rejects.toMatchObject(changed);
    await expect(folder.write('gone.md', bytes('new'), { base: hashOf(bytes('x')) })).rejects.toMatchObject(changed);
    expect(await text(folder, 'guide.md')).toBe('old');
    expect(await folder.exists('gone.md')).toBe(false);
    await folder.write('guide.md', bytes('new'), { base: hashOf(bytes('old')) });
    await folder.write('other.md', bytes('first'), { base: null });
    expect([await text(folder, 'guide.md'), await text(folder, 'other.md')]).toEqual(['new', 'first']);
  });

  test('lets one of two writers with the same base win', async () => {
    const folder = await make({ 'guide.md': 'old' });
    const base = hashOf(bytes('old'));
    const outcomes = await Promise.allSettled(
      ['one', 'two', 'three'].map((word) => folder.write('guide.md', bytes(word), { base })),
    );
    expect(outcomes.filter(({ status }) => status === 'fulfilled').length).toBe(1);
    expect((await folder.walk(all)).files.map((file) => file.path)).toEqual(['guide.md']);
  });

  test('appends whole lines and ends a torn last line first', async () => {
    const folder = await make({ 'history.jsonl': '{"a":1}\n{"b":' });
    await folder.append('history.jsonl', '{"c":3}');
    await folder.append('history.jsonl', '{"d":4}\n{"e":5}\n');
    await folder.append('history.jsonl', '');
    await folder.append('new.jsonl', 'x');
    expect(await text(folder, 'history.jsonl')).toBe('{"a":1}\n{"b":\n{"c":3}\n{"d":4}\n{"e":5}\n');
    expect(await text(folder, 'new.jsonl')).toBe('x\n');
  });

  test('keeps every line of appends that run side by side', async () => {
    const folder = await make({});
    const lines = Array.from({ length: 20 }, (_, i) => `line ${i}`);
    await Promise.all(lines.map((line) => folder.append('log.md', line)));
    expect((await text(folder, 'log.md')).trimEnd().split('\n').sort()).toEqual([...lines].sort());
  });

  test('removes files and empty folders, and nothing else', async () => {
    const folder = await make({ 'a/b.txt': 'x', 'c.txt': 'y' });
    await folder.remove('c.txt');
    await folder.remove('never-there.txt');
    await expect(folder.remove('a')).rejects.toMatchObject({ code: 'not-allowed' });
    expect((await folder.walk(all)).files.map((file) => file.path)).toEqual(['a/b.txt']);
  });

  test.each(['../x', 'a/../../x', '/etc/passwd', '', '.', 'a//b', 'a/./b', 'a\0b', 'a/'])(
    'refuses the path %j in every method',
    async (path) => {
      const folder = await make({ 'a/b.txt': 'x' });
      const refusals = [
        () => folder.exists(path),
        () => folder.read(path),
        () => folder.readHead(path, 1),
        () => folder.hash(path),
        () => folder.write(path, bytes('x')),
        () => folder.append(path, 'x'),
        () => folder.remove(path),
      ];
      for (const refusal of refusals) {
        await expect((async () => refusal())()).rejects.toMatchObject({ name: 'Failure', code: 'not-allowed' });
      }
    },
  );

  test('says not-found for a file that is not there', async () => {
    const folder = await make({});
    await expect(folder.read('guide.md')).rejects.toMatchObject({ code: 'not-found', hint: /spelling/ });
    await expect(folder.hash('guide.md')).rejects.toMatchObject({ code: 'not-found' });
  });

  test('refuses to read or overwrite a folder as if it were a file', async () => {
    const folder = await make({ 'a/b.txt': 'x' });
    await expect(folder.read('a')).rejects.toMatchObject({ name: 'Failure' });
    await expect(folder.write('a', bytes('x'))).rejects.toMatchObject({ code: 'write-failed' });
    expect(await text(folder, 'a/b.txt')).toBe('x');
  });
});
