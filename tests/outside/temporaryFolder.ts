import { createHash } from 'node:crypto';
import { lstat, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder for one test, removed when the test is over. */
export async function temporaryFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'twicebuilt-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** Every name below a folder with the hash of its content: what must be the same before and after. */
export async function everythingIn(folder: string): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const name of (await readdir(folder, { recursive: true })).sort()) {
    const absolute = path.join(folder, name);
    const stat = await lstat(absolute);
    const mode = (stat.mode & 0o777).toString(8);
    found[name] = stat.isFile()
      ? `${mode} ${createHash('sha256')
          .update(await readFile(absolute))
          .digest('hex')}`
      : stat.isSymbolicLink()
        ? 'link'
        : 'folder';
  }
  return found;
}
