import { createHash } from 'node:crypto';
import path from 'node:path';
import type { FolderPort } from '#app/ports.ts';
import { Failure } from '#core/failure.ts';
import { appendLines } from './appendLines.ts';
import { failureOf } from './failureOf.ts';
import { codeOf, type FileSystem } from './fileSystem.ts';
import { withLock } from './folderLock.ts';
import { nodeFileSystem } from './nodeFileSystem.ts';
import { hashSteadily, readRange, readSteadily } from './readSteadily.ts';
import { safePath } from './safePath.ts';
import { walkFolder } from './walkFolder.ts';
import { writeWhole } from './writeWhole.ts';

/** A folder on a disk, which can also be read in parts: what large files need. */
export interface DiskFolder extends FolderPort {
  /** Size of a file in bytes. */
  sizeOf(path: string): Promise<number>;
  /** Bytes from `start`, at most `bytes` of them; fewer where the file ends before. */
  readRange(path: string, start: number, bytes: number): Promise<Uint8Array>;
}

/** Whether a folder can read parts of a file. */
export function isDiskFolder(folder: FolderPort): folder is DiskFolder {
  return 'sizeOf' in folder && 'readRange' in folder;
}

/**
 * Opens a folder for reading and careful writing. Throws `Failure`: `not-found`, `not-a-folder` or
 * `not-allowed`. Nothing is written by opening.
 */
export async function openFolder(folderPath: string, system: FileSystem = nodeFileSystem): Promise<DiskFolder> {
  const root = path.resolve(folderPath);
  await checkRoot(root, system);
  const at = (inside: string) => path.join(root, ...safePath(inside));
  const reading = <T>(inside: string, work: (absolute: string) => Promise<T>) => guarded(inside, 'read', at, work);
  const writing = <T>(inside: string, work: (absolute: string) => Promise<T>) => guarded(inside, 'write', at, work);

  return {
    root,
    walk: (skip) => walkFolder(root, system, skip),
    exists: (inside) => reading(inside, (absolute) => exists(absolute, system)),
    read: (inside) => reading(inside, (absolute) => readSteadily(absolute, inside, system)),
    readHead: (inside, bytes) => reading(inside, (absolute) => readRange(absolute, inside, 0, bytes, system)),
    readRange: (inside, start, bytes) =>
      reading(inside, (absolute) => readRange(absolute, inside, start, bytes, system)),
    sizeOf: (inside) => reading(inside, async (absolute) => (await system.stat(absolute)).bytes),
    hash: (inside) => reading(inside, (absolute) => hashSteadily(absolute, inside, system)),
    write: (inside, bytes, options = {}) =>
      writing(inside, (absolute) =>
        writeWhole({
          absolute,
          inside,
          bytes,
          system,
          guard: (rename) =>
            options.base === undefined
              ? rename()
              : withLock(root, system, async () => {
                  await checkBase(absolute, inside, options.base ?? null, system);
                  await rename();
                }),
        }),
      ),
    append: (inside, text) =>
      writing(inside, (absolute) => withLock(root, system, () => appendLines(absolute, inside, text, system))),
    remove: (inside) => writing(inside, (absolute) => remove(absolute, system)),
  };
}

/** Lower-case hexadecimal SHA-256 of bytes. */
export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

async function checkRoot(root: string, system: FileSystem): Promise<void> {
  const stat = await system.stat(root).catch((error: unknown) => {
    throw failureOf(error, root, 'read');
  });
  if (stat.kind !== 'folder') {
    throw new Failure('not-a-folder', `'${root}' is a file, not a folder.`, 'Name the folder that holds the build.');
  }
}

async function guarded<T>(
  inside: string,
  doing: 'read' | 'write',
  at: (inside: string) => string,
  work: (absolute: string) => Promise<T>,
): Promise<T> {
  const absolute = at(inside);
  try {
    return await work(absolute);
  } catch (error) {
    throw failureOf(error, inside, doing);
  }
}

async function exists(absolute: string, system: FileSystem): Promise<boolean> {
  try {
    await system.stat(absolute);
    return true;
  } catch (error) {
    if (['ENOENT', 'ENOTDIR', 'ELOOP', 'ENAMETOOLONG'].includes(codeOf(error) ?? '')) return false;
    throw error;
  }
}

async function checkBase(absolute: string, inside: string, base: string | null, system: FileSystem): Promise<void> {
  const found = (await exists(absolute, system)) ? await hashSteadily(absolute, inside, system) : null;
  if (found === base) return;
  const what =
    base === null ? 'is there already' : found === null ? 'is gone' : 'was changed by someone else in the meantime';
  throw new Failure('file-changed', `'${inside}' ${what}. It was left as it is.`, 'Look at it, then do this again.');
}

async function remove(absolute: string, system: FileSystem): Promise<void> {
  try {
    const { kind } = await system.statLink(absolute);
    await (kind === 'folder' ? system.removeFolder(absolute) : system.removeFile(absolute));
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return;
    if (['ENOTEMPTY', 'EEXIST'].includes(codeOf(error) ?? '')) {
      throw new Failure('not-allowed', `The folder '${absolute}' is not empty.`, 'Empty it first.', { cause: error });
    }
    throw error;
  }
}
