import { Failure } from '#core/failure.ts';
import { codeOf, type FileSystem, type OpenFile } from './fileSystem.ts';
import { writeAll } from './writeWhole.ts';

const newline = 10;

/**
 * Adds text as whole lines at the end of a file, making the file where it is missing. A last line without its
 * line end is ended first. Where the disk refuses half-way, what was added is taken back.
 */
export async function appendLines(absolute: string, inside: string, text: string, system: FileSystem): Promise<void> {
  if (text === '') return;
  const isNew = await isMissing(absolute, system);
  const file = await system.open(absolute, 'append');
  try {
    await addLines(file, inside, text);
  } catch (error) {
    if (isNew) await system.removeFile(absolute).catch(() => {});
    throw error;
  } finally {
    await file.close();
  }
}

async function addLines(file: OpenFile, inside: string, text: string): Promise<void> {
  const { kind, bytes } = await file.stat();
  if (kind !== 'file') {
    throw new Failure('write-failed', `'${inside}' is no ordinary file.`, 'Move it away or choose another name.');
  }
  const torn = bytes > 0 && (await lastByte(file, bytes)) !== newline;
  const lines = `${torn ? '\n' : ''}${text}${text.endsWith('\n') ? '' : '\n'}`;
  try {
    await writeAll(file, new TextEncoder().encode(lines));
    await file.flush();
  } catch (error) {
    await file.truncate(bytes).catch(() => {});
    throw error;
  }
}

async function lastByte(file: OpenFile, bytes: number): Promise<number | undefined> {
  const last = new Uint8Array(1);
  return (await file.read(last, bytes - 1)) === 1 ? last[0] : undefined;
}

async function isMissing(absolute: string, system: FileSystem): Promise<boolean> {
  try {
    await system.stat(absolute);
    return false;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return true;
    throw error;
  }
}
