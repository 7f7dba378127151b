import path from 'node:path';
import { failureOf } from './failureOf.ts';
import { codeOf, type FileSystem } from './fileSystem.ts';
import { nodeFileSystem } from './nodeFileSystem.ts';

/** A path made absolute, with links and `..` resolved as far as it exists; the rest is taken as written. */
export async function absolutePath(given: string, system: FileSystem = nodeFileSystem): Promise<string> {
  const missing: string[] = [];
  for (let at = path.resolve(given); ; at = path.dirname(at)) {
    try {
      return path.join(await system.realPath(at), ...missing);
    } catch (error) {
      const isRoot = path.dirname(at) === at;
      if (isRoot || !['ENOENT', 'ENOTDIR'].includes(codeOf(error) ?? '')) throw failureOf(error, given, 'read');
      missing.unshift(path.basename(at));
    }
  }
}
