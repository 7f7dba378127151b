import { createHash } from 'node:crypto';
import { Failure } from '#core/failure.ts';
import type { FileStat, FileSystem, OpenFile } from './fileSystem.ts';

const blockBytes = 1 << 20;
const attempts = 3;

/** All bytes of a file, taken at one moment: read again where it changed meanwhile, given up after three times. */
export async function readSteadily(absolute: string, inside: string, system: FileSystem): Promise<Uint8Array> {
  return steadily(absolute, inside, system, async (file, stat) => {
    const bytes = new Uint8Array(stat.bytes);
    const length = await fill(file, bytes, 0);
    return bytes.subarray(0, length);
  });
}

/** SHA-256 of a file, read in blocks. */
export async function hashSteadily(absolute: string, inside: string, system: FileSystem): Promise<string> {
  return steadily(absolute, inside, system, async (file, stat) => {
    const hash = createHash('sha256');
    const block = new Uint8Array(Math.min(blockBytes, Math.max(1, stat.bytes)));
    for (let position = 0; ; ) {
      const length = await file.read(block, position);
      if (length === 0) return hash.digest('hex');
      hash.update(block.subarray(0, length));
      position += length;
    }
  });
}

/** Part of a file; fewer bytes than asked where it ends. */
export async function readRange(
  absolute: string,
  inside: string,
  start: number,
  bytes: number,
  system: FileSystem,
): Promise<Uint8Array> {
  return withFile(absolute, inside, system, async (file, stat) => {
    const into = new Uint8Array(Math.max(0, Math.min(bytes, stat.bytes - start)));
    return into.subarray(0, await fill(file, into, start));
  });
}

async function steadily<T>(
  absolute: string,
  inside: string,
  system: FileSystem,
  work: (file: OpenFile, stat: FileStat) => Promise<T>,
): Promise<T> {
  for (let attempt = 0; attempt < attempts; attempt++) {
    const { result, steady } = await withFile(absolute, inside, system, async (file, before) => {
      const result = await work(file, before);
      return { result, steady: (await file.stat()).stamp === before.stamp };
    });
    if (steady) return result;
  }
  throw new Failure(
    'file-changed',
    `'${inside}' kept changing while it was being read.`,
    'Let the program that writes it finish, then run this again.',
  );
}

async function withFile<T>(
  absolute: string,
  inside: string,
  system: FileSystem,
  work: (file: OpenFile, stat: FileStat) => Promise<T>,
): Promise<T> {
  // Looked at before it is opened: opening a pipe would wait for ever.
  const { kind } = await system.stat(absolute);
  if (kind !== 'file') {
    throw new Failure(
      'read-failed',
      `'${inside}' is ${kind === 'folder' ? 'a folder' : 'no ordinary file'}; a file was expected.`,
      'Name a file.',
    );
  }
  const file = await system.open(absolute, 'read');
  try {
    return await work(file, await file.stat());
  } finally {
    await file.close();
  }
}

async function fill(file: OpenFile, into: Uint8Array, start: number): Promise<number> {
  let length = 0;
  while (length < into.length) {
    const got = await file.read(into.subarray(length), start + length);
    if (got === 0) break;
    length += got;
  }
  return length;
}
