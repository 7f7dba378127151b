import path from 'node:path';
import { failureOf } from './failureOf.ts';
import { codeOf, type FileSystem } from './fileSystem.ts';
import { nodeFileSystem } from './nodeFileSystem.ts';
import { type DiskFolder, openFolder } from './openFolder.ts';

/** A folder to write into, made with its parents where it is missing. Throws `Failure` where it cannot be. */
export async function openOutput(given: string, system: FileSystem = nodeFileSystem): Promise<DiskFolder> {
  try {
    await makeFolder(path.resolve(given), system);
  } catch (error) {
    throw failureOf(error, given, 'write');
  }
  return openFolder(given, system);
}

async function makeFolder(folder: string, system: FileSystem): Promise<void> {
  try {
    await system.makeFolder(folder);
  } catch (error) {
    // Whether what is there is a folder, opening it will tell.
    if (codeOf(error) === 'EEXIST' || path.dirname(folder) === folder) return;
    if (codeOf(error) !== 'ENOENT') throw error;
    await makeFolder(path.dirname(folder), system);
    await system.makeFolder(folder);
  }
}
