import { randomBytes } from 'node:crypto';
import path from 'node:path';
import { Failure } from '#core/failure.ts';
import { codeOf, type FileStat, type FileSystem, type OpenFile } from './fileSystem.ts';

interface Writing {
  readonly absolute: string;
  readonly inside: string;
  readonly bytes: Uint8Array;
  readonly system: FileSystem;
  /** Runs the rename, once it has made sure that it may be done. */
  readonly guard: (rename: () => Promise<void>) => Promise<void>;
}

/**
 * Puts the whole content in place or leaves everything as it was: a temporary file beside the target, flushed,
 * then renamed onto it. A link stays a link, the file that it leads to is replaced. Mode and owner are kept.
 */
export async function writeWhole({ absolute, inside, bytes, system, guard }: Writing): Promise<void> {
  const { target, before } = await targetOf(absolute, inside, system);
  const folder = path.dirname(target);
  const made = await makeFolders(folder, system);
  const temporary = path.join(folder, temporaryName(path.basename(target)));
  try {
    await writeTemporary(temporary, bytes, before, system);
    await guard(() => system.rename(temporary, target));
  } catch (error) {
    await system.removeFile(temporary).catch(() => {});
    for (const folder of made.reverse()) await system.removeFolder(folder).catch(() => {});
    throw error;
  }
  // The new content is in place by now; some disks cannot flush a folder.
  await system.flushFolder(folder).catch(() => {});
}

async function targetOf(
  absolute: string,
  inside: string,
  system: FileSystem,
): Promise<{ target: string; before: FileStat | null }> {
  const found = await orNull(system.statLink(absolute));
  if (found === null) return { target: absolute, before: null };
  const target = found.kind === 'link' ? await realTarget(absolute, inside, system) : absolute;
  const before = await system.stat(target);
  if (before.kind !== 'file') {
    throw new Failure(
      'write-failed',
      `'${inside}' is ${before.kind === 'folder' ? 'a folder' : 'no ordinary file'}; a file was to be written there.`,
      'Move it away or choose another name.',
    );
  }
  // A rename would replace it all the same, but its owner has said that it is not to be written.
  if ((before.mode & 0o222) === 0) {
    throw new Failure('not-allowed', `'${inside}' is marked read-only.`, 'Allow writing to it, then do this again.');
  }
  return { target, before };
}

async function realTarget(absolute: string, inside: string, system: FileSystem): Promise<string> {
  const target = await orNull(system.realPath(absolute));
  if (target !== null) return target;
  throw new Failure('not-found', `'${inside}' is a link that leads nowhere.`, 'Mend or remove the link.');
}

async function makeFolders(folder: string, system: FileSystem): Promise<string[]> {
  const missing: string[] = [];
  for (let at = folder; (await orNull(system.stat(at))) === null; at = path.dirname(at)) missing.push(at);
  const made: string[] = [];
  for (const at of missing.reverse()) {
    try {
      await system.makeFolder(at);
      made.push(at);
    } catch (error) {
      // Another writer may have made it in the meantime.
      if (codeOf(error) === 'EEXIST') continue;
      for (const folder of made.reverse()) await system.removeFolder(folder).catch(() => {});
      throw error;
    }
  }
  return made;
}

/** Hidden, random, and no longer than file systems allow for a name (255 bytes), whatever the target's length. */
function temporaryName(name: string): string {
  const shortened = new TextDecoder().decode(new TextEncoder().encode(name).slice(0, 200)).replaceAll('\ufffd', '');
  return `.${shortened}.${randomBytes(6).toString('hex')}.tmp`;
}

async function writeTemporary(
  temporary: string,
  bytes: Uint8Array,
  like: FileStat | null,
  system: FileSystem,
): Promise<void> {
  const file = await system.open(temporary, 'create');
  try {
    await writeAll(file, bytes);
    if (like) await keepAttributes(file, like);
    await file.flush();
    const { bytes: written } = await file.stat();
    if (written !== bytes.length) {
      throw new Failure(
        'write-failed',
        `Only ${written} of ${bytes.length} bytes reached the disk.`,
        'Check the disk, then run this again. Nothing of yours was changed.',
      );
    }
  } finally {
    await file.close();
  }
}

/** Writes all bytes, however few the system takes at a time. */
export async function writeAll(file: OpenFile, bytes: Uint8Array): Promise<void> {
  for (let done = 0; done < bytes.length; ) done += await file.write(bytes.subarray(done));
}

async function keepAttributes(file: OpenFile, like: FileStat): Promise<void> {
  const now = await file.stat();
  if (now.owner !== like.owner || now.group !== like.group) {
    // Only the administrator may give files away; for anyone else the file becomes their own.
    await file.setOwner(like.owner, like.group).catch(() => {});
  }
  await file.setMode(like.mode);
}

async function orNull<T>(work: Promise<T>): Promise<T | null> {
  try {
    return await work;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}
