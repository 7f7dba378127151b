import type { FolderPort } from '#app/ports.ts';
import { Failure } from '#core/failure.ts';
import { codePointOrder } from './codePointOrder.ts';
import { hashOf } from './openFolder.ts';
import { safePath } from './safePath.ts';

/** A folder that lives in memory: for tests, and for the examples that checks carry. Texts are kept as UTF-8. */
export function memoryFolder(files: Record<string, string | Uint8Array>): FolderPort {
  const held = new Map(Object.entries(files).map(([path, content]) => [checked(path), bytesOf(content)]));
  const found = (path: string): Uint8Array => {
    const bytes = held.get(checked(path));
    if (bytes) return bytes;
    throw new Failure('not-found', `'${path}' is not there.`, 'Check the spelling, capitals included.');
  };
  const isFolder = (path: string) => [...held.keys()].some((file) => file.startsWith(`${path}/`));

  return {
    root: '/memory',
    async walk(skip) {
      const listed: { path: string; bytes: number }[] = [];
      const leftOut = new Map<string, string>();
      for (const [path, bytes] of held) {
        const passedOver = passOver(path, skip);
        if (passedOver) leftOut.set(passedOver.path, passedOver.why);
        else listed.push({ path, bytes: bytes.length });
      }
      return {
        files: listed.sort((a, b) => codePointOrder(a.path, b.path)),
        leftOut: [...leftOut].map(([path, why]) => ({ path, why })).sort((a, b) => codePointOrder(a.path, b.path)),
      };
    },
    exists: async (path) => held.has(checked(path)) || isFolder(path),
    read: async (path) => copyOf(found(path)),
    readHead: async (path, bytes) => copyOf(found(path).subarray(0, bytes)),
    hash: async (path) => hashOf(found(path)),
    async write(path, bytes, options = {}) {
      const now = held.get(checked(path));
      if (options.base !== undefined && options.base !== (now ? hashOf(now) : null)) {
        throw new Failure('file-changed', `'${path}' is not as it was.`, 'Look at it, then do this again.');
      }
      if (isFolder(path)) throw new Failure('write-failed', `'${path}' is a folder.`, 'Choose another name.');
      held.set(path, copyOf(bytes));
    },
    async append(path, text) {
      if (text === '') return;
      const before = held.get(checked(path)) ?? new Uint8Array();
      const torn = before.length > 0 && before.at(-1) !== 10;
      held.set(path, joined(before, bytesOf(`${torn ? '\n' : ''}${text}${text.endsWith('\n') ? '' : '\n'}`)));
    },
    async remove(path) {
      if (isFolder(checked(path))) throw new Failure('not-allowed', `'${path}' is not empty.`, 'Empty it first.');
      held.delete(path);
    },
  };
}

function passOver(
  path: string,
  skip: (path: string, isFolder: boolean) => string | null,
): { path: string; why: string } | null {
  const parts = path.split('/');
  for (let depth = 1; depth <= parts.length; depth++) {
    const at = parts.slice(0, depth).join('/');
    const why = skip(at, depth < parts.length);
    if (why !== null) return { path: at, why };
  }
  return null;
}

function checked(path: string): string {
  return safePath(path).join('/');
}

function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? new TextEncoder().encode(content) : copyOf(content);
}

/** Not `slice`: that of a Buffer shares its memory. */
function copyOf(bytes: Uint8Array): Uint8Array {
  return new Uint8Array(bytes);
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
