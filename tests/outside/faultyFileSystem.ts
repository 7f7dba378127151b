import { codeOf, type FileSystem, type OpenFile } from '#outside/files/fileSystem.ts';
import { nodeFileSystem } from '#outside/files/nodeFileSystem.ts';

export type FaultCode = 'ENOSPC' | 'EIO' | 'EACCES' | 'EROFS';

export interface Fault {
  /** Which call goes wrong, from 1. */
  readonly nth: number;
  /** Only calls that this says yes to are counted; all where it is missing. */
  readonly counts?: (call: string) => boolean;
  /** `tear` writes half of what it was given, then fails; `crash` lets nothing through from then on. */
  readonly how: FaultCode | 'tear' | 'crash';
}

export interface FaultySystem {
  readonly system: FileSystem;
  /** Names of the calls made so far. */
  readonly calls: readonly string[];
  /** Name of the call that went wrong; null while none did. */
  fired(): string | null;
}

/** A disk that fails at a given call and works otherwise. */
export function faultyFileSystem(fault: Fault, base: FileSystem = nodeFileSystem): FaultySystem {
  const calls: string[] = [];
  let counted = 0;
  let firedAt: string | null = null;
  const passes = async <T>(name: string, call: () => Promise<T>, torn?: () => Promise<unknown>): Promise<T> => {
    calls.push(name);
    if (fault.how === 'crash' && firedAt !== null) throw systemError('EIO');
    if (fault.counts === undefined || fault.counts(name)) counted++;
    if (counted !== fault.nth || firedAt !== null) return call();
    firedAt = name;
    if (fault.how === 'tear') await torn?.();
    throw systemError(fault.how === 'tear' || fault.how === 'crash' ? 'EIO' : fault.how);
  };
  const wrap = (file: OpenFile): OpenFile => ({
    read: (into, position) => passes('read', () => file.read(into, position)),
    write: (bytes) =>
      passes(
        'write',
        () => file.write(bytes),
        () => file.write(bytes.subarray(0, bytes.length >> 1)),
      ),
    stat: () => passes('file stat', () => file.stat()),
    truncate: (bytes) => passes('truncate', () => file.truncate(bytes)),
    setMode: (mode) => passes('setMode', () => file.setMode(mode)),
    setOwner: (owner, group) => passes('setOwner', () => file.setOwner(owner, group)),
    flush: () => passes('flush', () => file.flush()),
    // A file is closed whatever happens: a disk that fails still gives its handle back.
    close: () => file.close(),
  });
  return {
    calls,
    fired: () => firedAt,
    system: {
      list: (path) => passes('list', () => base.list(path)),
      stat: (path) => passes('stat', () => base.stat(path)),
      statLink: (path) => passes('statLink', () => base.statLink(path)),
      realPath: (path) => passes('realPath', () => base.realPath(path)),
      open: (path, how) => passes(`open to ${how}`, async () => wrap(await base.open(path, how))),
      rename: (from, to) => passes('rename', () => base.rename(from, to)),
      removeFile: (path) => passes('removeFile', () => base.removeFile(path)),
      removeFolder: (path) => passes('removeFolder', () => base.removeFolder(path)),
      makeFolder: (path) => passes('makeFolder', () => base.makeFolder(path)),
      flushFolder: (path) => passes('flushFolder', () => base.flushFolder(path)),
    },
  };
}

/** A disk on which `meddle` runs after each read of a file, as another program would. */
export function meddledFileSystem(meddle: () => Promise<void>, base: FileSystem = nodeFileSystem): FileSystem {
  return {
    ...base,
    open: async (path, how) => {
      const file = await base.open(path, how);
      return {
        ...file,
        read: async (into, position) => {
          const length = await file.read(into, position);
          await meddle();
          return length;
        },
      };
    },
  };
}

function systemError(code: string): Error {
  const error = Object.assign(new Error(`${code}: made to fail`), { code });
  if (codeOf(error) !== code) throw new Error('A system error must carry its code.');
  return error;
}
