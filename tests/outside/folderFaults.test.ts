import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { Failure } from '#core/failure.ts';
import { hashOf, openFolder } from '#outside/files/openFolder.ts';
import { type FaultCode, type FaultySystem, faultyFileSystem } from './faultyFileSystem.ts';
import { everythingIn, temporaryFolder } from './temporaryFolder.ts';

const old = 'line one\nline two\n';
const fresh = new TextEncoder().encode('new content\n'.repeat(1000));
const expected: Record<FaultCode | 'tear', string> = {
  ENOSPC: 'disk-full',
  EIO: 'write-failed',
  EACCES: 'not-allowed',
  EROFS: 'not-allowed',
  tear: 'write-failed',
};
/** Clean-up that itself fails cannot be cleaned up; these calls have tests of their own below. */
const works = (call: string) => !call.startsWith('remove');

async function makersFolder(): Promise<string> {
  const root = await temporaryFolder();
  await writeFile(path.join(root, 'guide.md'), old);
  await writeFile(path.join(root, 'history.jsonl'), old);
  return root;
}

type Deed = (root: string, faulty: FaultySystem) => Promise<void>;

const deeds: Record<string, Deed> = {
  'overwriting with a base': async (root, { system }) =>
    (await openFolder(root, system)).write('guide.md', fresh, { base: hashOf(new TextEncoder().encode(old)) }),
  'overwriting without a base': async (root, { system }) => (await openFolder(root, system)).write('guide.md', fresh),
  'writing a new file in new folders': async (root, { system }) =>
    (await openFolder(root, system)).write('out/site/page.html', fresh, { base: null }),
  appending: async (root, { system }) => (await openFolder(root, system)).append('history.jsonl', 'line three'),
  'appending to a new file': async (root, { system }) => (await openFolder(root, system)).append('new.jsonl', 'x'),
};

describe.each(Object.keys(deeds))('%s', (name) => {
  const deed = deeds[name] ?? expect.fail();

  test.each(['ENOSPC', 'EIO', 'EACCES', 'EROFS', 'tear'] as const)(
    'leaves every file as it was when any one call fails with %s',
    async (how) => {
      let failures = 0;
      for (let nth = 1; ; nth++) {
        const root = await makersFolder();
        const before = await everythingIn(root);
        const faulty = faultyFileSystem({ nth, how, counts: works });
        const outcome = await deed(root, faulty).then(
          () => null,
          (error: unknown) => error,
        );
        if (faulty.fired() === null) break;
        if (outcome === null) {
          // The folder cannot be flushed, or the owner not kept: the content is in place all the same.
          expect(['flushFolder', 'setOwner']).toContain(faulty.fired());
          continue;
        }
        expect(outcome, `${faulty.fired()} failed`).toBeInstanceOf(Failure);
        const failure = outcome as Failure;
        if (faulty.fired() === 'write' || faulty.fired() === 'flush') expect(failure.code).toBe(expected[how]);
        expect(failure.hint).not.toBe('');
        expect(await everythingIn(root), `${faulty.fired()} failed`).toEqual(before);
        failures++;
      }
      expect(failures).toBeGreaterThan(3);
    },
  );

  test('leaves the old or the new content, never a mixture, wherever the program is killed; and goes on after', async () => {
    for (let nth = 1; ; nth++) {
      const root = await makersFolder();
      const faulty = faultyFileSystem({ nth, how: 'crash' });
      await deed(root, faulty).catch(() => {});
      if (faulty.fired() === null) break;
      const guide = await readFile(path.join(root, 'guide.md'));
      expect([hashOf(new TextEncoder().encode(old)), hashOf(fresh)]).toContain(hashOf(guide));
      const history = await readFile(path.join(root, 'history.jsonl'), 'utf8');
      expect(history.startsWith(old)).toBe(true);
      const folder = await openFolder(root);
      await folder.write('guide.md', fresh, { base: hashOf(guide) });
      await folder.append('history.jsonl', 'after');
      expect((await readFile(path.join(root, 'history.jsonl'), 'utf8')).endsWith('\nafter\n')).toBe(true);
    }
  });
});

test('reading fails with a Failure that names the file, whichever call goes wrong', async () => {
  const root = await makersFolder();
  let failures = 0;
  for (let nth = 1; ; nth++) {
    const faulty = faultyFileSystem({ nth, how: 'EIO', counts: (call) => call !== 'realPath' });
    const folder = await openFolder(root, faulty.system).catch((error: unknown) => error);
    if (faulty.fired() === null && !(folder instanceof Error)) {
      const outcome = await (folder as Awaited<ReturnType<typeof openFolder>>)
        .read('guide.md')
        .catch((error: unknown) => error);
      if (faulty.fired() === null) break;
      expect(outcome).toMatchObject({ code: 'read-failed', message: expect.stringContaining("'guide.md'") });
      failures++;
    }
  }
  expect(failures).toBeGreaterThan(2);
});

test('a folder inside that cannot be opened is left out with the reason, and the rest is listed', async () => {
  const root = await makersFolder();
  await (await openFolder(root)).write('photos/a.jpg', fresh);
  const faulty = faultyFileSystem({ nth: 2, how: 'EACCES', counts: (call) => call === 'list' });
  const { files, leftOut } = await (await openFolder(root, faulty.system)).walk(() => null);
  expect(files.map((file) => file.path)).toEqual(['guide.md', 'history.jsonl']);
  expect(leftOut).toEqual([{ path: 'photos', why: expect.stringContaining('closed to you') }]);
});

test('a lock that could not be removed does not hinder the next write', async () => {
  const root = await makersFolder();
  const faulty = faultyFileSystem({ nth: 1, how: 'EIO', counts: (call) => call === 'removeFile' });
  const folder = await openFolder(root, faulty.system);
  await folder.append('history.jsonl', 'a');
  expect(faulty.fired()).toBe('removeFile');
  await folder.append('history.jsonl', 'b');
  expect(Object.keys(await everythingIn(root))).toEqual(['guide.md', 'history.jsonl']);
});
