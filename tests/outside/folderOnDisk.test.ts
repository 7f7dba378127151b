import { execFileSync } from 'node:child_process';
import {
  chmod,
  lstat,
  mkdir,
  readdir,
  readFile,
  readlink,
  rename,
  stat,
  symlink,
  utimes,
  writeFile,
} from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { lockName } from '#outside/files/folderLock.ts';
import { hashOf, openFolder } from '#outside/files/openFolder.ts';
import { meddledFileSystem } from './faultyFileSystem.ts';
import { everythingIn, temporaryFolder } from './temporaryFolder.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const all = () => null;

test('opening tells a missing folder from a file', async () => {
  const root = await temporaryFolder();
  await writeFile(path.join(root, 'file'), 'x');
  await expect(openFolder(path.join(root, 'gone'))).rejects.toMatchObject({ code: 'not-found' });
  await expect(openFolder(path.join(root, 'file'))).rejects.toMatchObject({ code: 'not-a-folder' });
  await expect(openFolder(path.join(root, 'file', 'x'))).rejects.toMatchObject({ code: 'not-found' });
});

test('a relative path is made absolute', async () => {
  expect((await openFolder('.')).root).toBe(process.cwd());
});

test('names with blanks, quotes, line ends, other scripts and 255 bytes are listed, read and rewritten', async () => {
  const root = await temporaryFolder();
  const names = [
    'a b.md',
    `it's "so".md`,
    'a\nb.md',
    'Прибор.md',
    '部品表.csv',
    'e\u0301.md',
    'back\\slash.md',
    '-rf',
    'x'.repeat(255),
    'Ω'.repeat(127),
  ];
  for (const name of names) await writeFile(path.join(root, name), 'old');
  const folder = await openFolder(root);
  const { files } = await folder.walk(all);
  expect(files.map((file) => file.path).sort()).toEqual([...names].sort());
  for (const name of names) await folder.write(name, bytes('new'), { base: hashOf(bytes('old')) });
  expect(Object.keys(await everythingIn(root)).sort()).toEqual([...names].sort());
  for (const name of names) expect(await readFile(path.join(root, name), 'utf8')).toBe('new');
});

test('a name that is no UTF-8 is left out with the reason, and the rest is listed', async () => {
  const root = await temporaryFolder();
  await writeFile(Buffer.concat([Buffer.from(`${root}/caf`), Buffer.from([0xe9]), Buffer.from('.md')]), 'x');
  await writeFile(path.join(root, 'guide.md'), 'x');
  const { files, leftOut } = await (await openFolder(root)).walk(all);
  expect(files).toEqual([{ path: 'guide.md', bytes: 1 }]);
  expect(leftOut).toEqual([{ path: 'caf\ufffd.md', why: 'its name is not valid UTF-8; rename it' }]);
});

test('a path that is too long for the system is left out with the reason', async () => {
  const root = await temporaryFolder();
  // Made as two shorter paths, one then moved into the other: no path this long can be given to the system.
  const long = Array(10).fill('d'.repeat(250)).join('/');
  await mkdir(path.join(root, long), { recursive: true });
  await mkdir(path.join(root, 'other', long), { recursive: true });
  await rename(path.join(root, 'other'), path.join(root, long, 'other'));
  await writeFile(path.join(root, 'guide.md'), 'x');
  const { files, leftOut } = await (await openFolder(root)).walk(all);
  expect(files.map((file) => file.path)).toEqual(['guide.md']);
  expect(leftOut).toHaveLength(1);
  expect(leftOut[0]?.why).toMatch(/too long/);
  execFileSync('rm', ['-rf', path.join(root, 'd'.repeat(250))]);
});

test('a link to a file is listed and read; a link to nowhere, to itself or to a pipe is left out', async () => {
  const root = await temporaryFolder();
  const elsewhere = await temporaryFolder();
  await writeFile(path.join(elsewhere, 'notes.md'), 'far');
  await symlink(path.join(elsewhere, 'notes.md'), path.join(root, 'notes.md'));
  await symlink('nowhere', path.join(root, 'dangling.md'));
  await symlink('self.md', path.join(root, 'self.md'));
  execFileSync('mkfifo', [path.join(root, 'pipe')]);
  await symlink('pipe', path.join(root, 'to-pipe'));
  const folder = await openFolder(root);
  const { files, leftOut } = await folder.walk(all);
  expect(files).toEqual([{ path: 'notes.md', bytes: 3 }]);
  expect(leftOut).toEqual([
    { path: 'dangling.md', why: 'a link that leads nowhere' },
    { path: 'pipe', why: 'not an ordinary file' },
    { path: 'self.md', why: 'a link that leads round in a circle' },
    { path: 'to-pipe', why: 'a link to something that is not an ordinary file' },
  ]);
  expect(new TextDecoder().decode(await folder.read('notes.md'))).toBe('far');
  await expect(folder.read('pipe')).rejects.toMatchObject({ code: 'read-failed' });
  expect(await folder.exists('self.md')).toBe(false);
  await expect(folder.write('dangling.md', bytes('x'))).rejects.toMatchObject({ code: 'not-found' });
});

test('a folder is listed by its own path, a linked folder elsewhere once, and a cycle not at all', async () => {
  const root = await temporaryFolder();
  const elsewhere = await temporaryFolder();
  await mkdir(path.join(elsewhere, 'inner'));
  await writeFile(path.join(elsewhere, 'inner', 'far.jpg'), 'x');
  await symlink(elsewhere, path.join(elsewhere, 'inner', 'round'));
  await mkdir(path.join(root, 'z'));
  await writeFile(path.join(root, 'z', 'near.jpg'), 'x');
  await symlink('z', path.join(root, 'a-to-z'));
  await symlink('..', path.join(root, 'z', 'up'));
  await symlink('/', path.join(root, 'top'));
  await symlink(elsewhere, path.join(root, 'photos'));
  await symlink(elsewhere, path.join(root, 'photos-again'));
  const { files, leftOut } = await (await openFolder(root)).walk(all);
  expect(files.map((file) => file.path)).toEqual(['photos/inner/far.jpg', 'z/near.jpg']);
  const cycle = 'a link to a folder that holds it; following it would never end';
  expect(leftOut).toEqual([
    { path: 'a-to-z', why: 'a link to a folder that is listed already' },
    { path: 'photos-again', why: 'a link to a folder that is listed already' },
    { path: 'photos/inner/round', why: cycle },
    { path: 'top', why: cycle },
    { path: 'z/up', why: cycle },
  ]);
});

test('a linked folder elsewhere cannot lead back to what lies round the folder', async () => {
  const base = await temporaryFolder();
  await mkdir(path.join(base, 'home', 'root'), { recursive: true });
  await mkdir(path.join(base, 'far'));
  await writeFile(path.join(base, 'home', 'private.txt'), 'x');
  await symlink('../../far', path.join(base, 'home', 'root', 'photos'));
  await symlink('../home', path.join(base, 'far', 'back'));
  const { files, leftOut } = await (await openFolder(path.join(base, 'home', 'root'))).walk(all);
  expect(files).toEqual([]);
  expect(leftOut).toEqual([
    { path: 'photos/back', why: 'a link to a folder that holds it; following it would never end' },
  ]);
});

test('skipping a folder keeps links to it out of the list too where they are skipped by name', async () => {
  const root = await temporaryFolder();
  await mkdir(path.join(root, '.hidden'));
  await writeFile(path.join(root, '.hidden', 'secret.md'), 'x');
  await symlink('.hidden', path.join(root, '.link'));
  const { files, leftOut } = await (await openFolder(root)).walk((path) => (path.startsWith('.') ? 'hidden' : null));
  expect(files).toEqual([]);
  expect(leftOut.map(({ path }) => path)).toEqual(['.hidden', '.link']);
});

test('writing through a link keeps the link and replaces what it leads to', async () => {
  const root = await temporaryFolder();
  const elsewhere = await temporaryFolder();
  await writeFile(path.join(elsewhere, 'real.md'), 'old');
  await symlink(path.join(elsewhere, 'real.md'), path.join(root, 'guide.md'));
  await (await openFolder(root)).write('guide.md', bytes('new'), { base: hashOf(bytes('old')) });
  expect(await readlink(path.join(root, 'guide.md'))).toBe(path.join(elsewhere, 'real.md'));
  expect((await lstat(path.join(elsewhere, 'real.md'))).isFile()).toBe(true);
  expect(await readFile(path.join(elsewhere, 'real.md'), 'utf8')).toBe('new');
  expect(Object.keys(await everythingIn(elsewhere))).toEqual(['real.md']);
  expect(Object.keys(await everythingIn(root))).toEqual(['guide.md']);
});

test('writing keeps the mode, and respects a file that is marked read-only', async () => {
  const root = await temporaryFolder();
  await writeFile(path.join(root, 'run.sh'), 'old');
  await chmod(path.join(root, 'run.sh'), 0o751);
  await writeFile(path.join(root, 'fixed.md'), 'old');
  await chmod(path.join(root, 'fixed.md'), 0o444);
  const folder = await openFolder(root);
  await folder.write('run.sh', bytes('new'));
  expect((await stat(path.join(root, 'run.sh'))).mode & 0o777).toBe(0o751);
  const before = await everythingIn(root);
  await expect(folder.write('fixed.md', bytes('new'))).rejects.toMatchObject({ code: 'not-allowed' });
  expect(await everythingIn(root)).toEqual(before);
});

test('a file that keeps changing while it is read is given up; one that settles is read anew', async () => {
  const root = await temporaryFolder();
  const file = path.join(root, 'log.md');
  await writeFile(file, 'start');
  let times = 0;
  const busy = meddledFileSystem(() => writeFile(file, `state ${++times}`));
  await expect((await openFolder(root, busy)).read('log.md')).rejects.toMatchObject({ code: 'file-changed' });
  await expect((await openFolder(root, busy)).hash('log.md')).rejects.toMatchObject({ code: 'file-changed' });
  let once = true;
  const settling = meddledFileSystem(async () => {
    if (once) await writeFile(file, 'the end, at last');
    once = false;
  });
  const read = await (await openFolder(root, settling)).read('log.md');
  expect(new TextDecoder().decode(read)).toBe('the end, at last');
});

test('a file that another program replaces between look and rename is left as that program wrote it', async () => {
  const root = await temporaryFolder();
  await writeFile(path.join(root, 'guide.md'), 'old');
  const folder = await openFolder(root);
  const base = await folder.hash('guide.md');
  await writeFile(path.join(root, 'their.md'), 'theirs');
  await rename(path.join(root, 'their.md'), path.join(root, 'guide.md'));
  await expect(folder.write('guide.md', bytes('ours'), { base })).rejects.toMatchObject({ code: 'file-changed' });
  expect(await readFile(path.join(root, 'guide.md'), 'utf8')).toBe('theirs');
  expect(await readdir(root)).toEqual(['guide.md']);
});

test('a fresh lock of another run is respected and named; a stale one is taken over', async () => {
  const root = await temporaryFolder();
  const lock = path.join(root, lockName);
  await writeFile(path.join(root, 'guide.md'), 'old');
  const folder = await openFolder(root);
  const base = await folder.hash('guide.md');
  await writeFile(lock, 'somebody else on another machine');
  await expect(folder.write('guide.md', bytes('new'), { base })).rejects.toMatchObject({
    code: 'locked',
    hint: expect.stringContaining(lock),
  });
  expect(await readFile(path.join(root, 'guide.md'), 'utf8')).toBe('old');
  expect((await readdir(root)).sort()).toEqual([lockName, 'guide.md'].sort());
  const longAgo = new Date(Date.now() - 120_000);
  await utimes(lock, longAgo, longAgo);
  await folder.write('guide.md', bytes('new'), { base });
  expect(await readdir(root)).toEqual(['guide.md']);
});

test('a lock whose holder has died is taken over at once', async () => {
  const root = await temporaryFolder();
  const dead = execFileSync('sh', ['-c', 'echo $$'], { encoding: 'utf8' }).trim();
  const { hostname } = await import('node:os');
  await writeFile(path.join(root, lockName), `${dead} ${hostname()} 00ff00ff00ff\n`);
  const folder = await openFolder(root);
  const started = performance.now();
  await folder.append('log.md', 'x');
  expect(performance.now() - started).toBeLessThan(2000);
  expect(await readdir(root)).toEqual(['log.md']);
});

test('five thousand files are listed without being read', async () => {
  const root = await temporaryFolder();
  execFileSync('sh', ['-c', 'for d in $(seq 5); do mkdir d$d; (cd d$d; seq -f "f%g.txt" 1000 | xargs touch); done'], {
    cwd: root,
  });
  const { files } = await (await openFolder(root)).walk(all);
  expect(files.length).toBe(5000);
});
