import { createHash } from 'node:crypto';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import type { CachePort, FolderPort } from '#app/ports.ts';
import { openFolder } from '../files/openFolder.ts';
import { memoryCache } from './memoryCache.ts';
import { userCacheFolder } from './userCacheFolder.ts';

const checksumBytes = 32;

/**
 * The cache of a folder: `.twicebuilt/cache/` inside it when adopted, else a folder of its own in the user's
 * cache folder. Entries carry a checksum; one that is damaged, or belongs to another key, reads as null. A cache
 * that cannot be written keeps nothing and says nothing: what it holds can be made again.
 */
export async function openCache(folder: FolderPort, adopted: boolean): Promise<CachePort> {
  if (adopted) return cacheIn(folder, '.twicebuilt/cache', ignoreInVersionControl(folder));
  const home = path.join(userCacheFolder(), 'twicebuilt', nameOf(folder.root));
  try {
    await mkdir(home, { recursive: true });
    return cacheIn(await openFolder(home), 'cache');
  } catch {
    return memoryCache();
  }
}

function cacheIn(folder: FolderPort, base: string, prepare: () => Promise<void> = async () => {}): CachePort {
  let prepared: Promise<void> | undefined;
  return {
    async get(key) {
      try {
        return contentOf(key, await folder.read(pathOf(base, key)));
      } catch {
        return null;
      }
    },
    async put(key, data) {
      try {
        prepared ??= prepare();
        await prepared;
        await folder.write(pathOf(base, key), entryOf(key, data));
      } catch {
        // A full or closed disk must not stop work whose result does not need the cache.
      }
    },
  };
}

function ignoreInVersionControl(folder: FolderPort): () => Promise<void> {
  const file = '.twicebuilt/.gitignore';
  return async () => {
    if (!(await folder.exists(file))) await folder.write(file, new TextEncoder().encode('*\n'));
  };
}

function pathOf(base: string, key: string): string {
  const name = createHash('sha256').update(key).digest('hex');
  return `${base}/${name.slice(0, 2)}/${name.slice(2)}`;
}

function entryOf(key: string, data: Uint8Array): Uint8Array {
  return Buffer.concat([checksumOf(key, data), data]);
}

function contentOf(key: string, entry: Uint8Array): Uint8Array | null {
  const data = entry.subarray(checksumBytes);
  return checksumOf(key, data).equals(entry.subarray(0, checksumBytes)) ? data : null;
}

function checksumOf(key: string, data: Uint8Array): Buffer {
  return createHash('sha256').update(key).update('\0').update(data).digest();
}

function nameOf(root: string): string {
  return createHash('sha256').update(root).digest('hex').slice(0, 32);
}
