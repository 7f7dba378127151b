import { randomBytes } from 'node:crypto';
import { hostname } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { Failure } from '#core/failure.ts';
import { codeOf, type FileSystem } from './fileSystem.ts';
import { writeAll } from './writeWhole.ts';

export const lockName = '.twicebuilt-lock';

/** A lock guards one look at a hash and one rename: whoever holds it longer has died or hangs. */
const staleAfterMs = 30_000;
const patienceMs = 5_000;
/** A lock is empty for the moment between its making and its first line, or for good where its maker died there. */
const emptyAfterMs = 2_000;

/** Writers of this process queue up here, and only the first of them bothers the disk. */
const queues = new Map<string, Promise<unknown>>();

/** Runs `work` while no other process of ours writes in the folder. Throws `Failure('locked')` after five seconds. */
export async function withLock<T>(root: string, system: FileSystem, work: () => Promise<T>): Promise<T> {
  const before = queues.get(root) ?? Promise.resolve();
  const turn = before.then(() => locked(root, system, work));
  const settled = turn.catch(() => {});
  queues.set(root, settled);
  try {
    return await turn;
  } finally {
    if (queues.get(root) === settled) queues.delete(root);
  }
}

/** Tokens of the locks that this process holds. */
const held = new Set<string>();

async function locked<T>(root: string, system: FileSystem, work: () => Promise<T>): Promise<T> {
  const lock = path.join(root, lockName);
  const token = randomBytes(6).toString('hex');
  held.add(token);
  try {
    await take(lock, token, system);
    try {
      return await work();
    } finally {
      await system.removeFile(lock).catch(() => {});
    }
  } finally {
    held.delete(token);
  }
}

async function take(lock: string, token: string, system: FileSystem): Promise<void> {
  const giveUpAt = performance.now() + patienceMs;
  for (let pause = 10; ; pause = Math.min(200, pause * 2)) {
    if (await create(lock, token, system)) return;
    if (await removeStale(lock, system)) continue;
    if (performance.now() > giveUpAt) {
      throw new Failure(
        'locked',
        `Another run of the program has been writing in this folder for ${patienceMs / 1000} seconds.`,
        `Wait until it is done. If none is running, delete '${lock}'.`,
      );
    }
    await wait(pause);
  }
}

async function create(lock: string, token: string, system: FileSystem): Promise<boolean> {
  try {
    const file = await system.open(lock, 'create');
    try {
      await writeAll(file, new TextEncoder().encode(`${process.pid} ${hostname()} ${token}\n`));
    } catch (error) {
      await system.removeFile(lock).catch(() => {});
      throw error;
    } finally {
      await file.close();
    }
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
}

/** Removes a lock whose holder is gone; false where somebody may still hold it. */
async function removeStale(lock: string, system: FileSystem): Promise<boolean> {
  const seen = await look(lock, system);
  if (seen === null) return true;
  const age = Date.now() - seen.modified;
  const isStale = age > (seen.text === '' ? emptyAfterMs : staleAfterMs) || isGone(seen.text);
  if (!isStale) return false;
  // Moved aside first: two runs may see the same stale lock, and the slower one must not remove the other's new lock.
  const aside = `${lock}.${randomBytes(6).toString('hex')}.tmp`;
  try {
    await system.rename(lock, aside);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return true;
    throw error;
  }
  const moved = await look(aside, system);
  if (moved !== null && moved.text !== seen.text) await system.rename(aside, lock);
  else await system.removeFile(aside).catch(() => {});
  return true;
}

async function look(lock: string, system: FileSystem): Promise<{ text: string; modified: number } | null> {
  try {
    const file = await system.open(lock, 'read');
    try {
      const bytes = new Uint8Array(200);
      const length = await file.read(bytes, 0);
      return { text: new TextDecoder().decode(bytes.subarray(0, length)), modified: (await file.stat()).modified };
    } finally {
      await file.close();
    }
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

function isGone(text: string): boolean {
  const [, holder, host, token = ''] = /^(\d+) (\S+) ([0-9a-f]+)\n$/.exec(text) ?? [];
  if (host !== hostname()) return false;
  // A lock of ours that nobody here holds could not be removed at the time, or is older than this process.
  if (Number(holder) === process.pid) return !held.has(token);
  try {
    process.kill(Number(holder), 0);
    return false;
  } catch (error) {
    return codeOf(error) === 'ESRCH';
  }
}
