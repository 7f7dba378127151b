import type { BigIntStats, Dirent } from 'node:fs';
import { type FileHandle, lstat, mkdir, open, readdir, realpath, rename, rmdir, stat, unlink } from 'node:fs/promises';
import type { EntryKind, FileStat, FileSystem, OpenFile } from './fileSystem.ts';

const flags = { read: 'r', create: 'wx', append: 'a+' } as const;

/** The disk of this machine. */
export const nodeFileSystem: FileSystem = {
  async list(folder) {
    const entries = await readdir(folder, { withFileTypes: true, encoding: 'buffer' });
    return entries.map((entry) => ({ name: entry.name, kind: kindOf(entry) }));
  },
  stat: async (path) => statFrom(await stat(path, { bigint: true })),
  statLink: async (path) => statFrom(await lstat(path, { bigint: true })),
  realPath: (path) => realpath(path),
  open: async (path, how) => openFileFrom(await open(path, flags[how])),
  rename,
  removeFile: unlink,
  removeFolder: rmdir,
  makeFolder: (path) => mkdir(path),
  async flushFolder(path) {
    const handle = await open(path, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
};

function openFileFrom(handle: FileHandle): OpenFile {
  return {
    read: async (into, position) => (await handle.read(into, 0, into.length, position)).bytesRead,
    write: async (bytes) => (await handle.write(bytes)).bytesWritten,
    stat: async () => statFrom(await handle.stat({ bigint: true })),
    truncate: (bytes) => handle.truncate(bytes),
    setMode: (mode) => handle.chmod(mode),
    setOwner: (owner, group) => handle.chown(owner, group),
    flush: () => handle.sync(),
    close: () => handle.close(),
  };
}

function statFrom(stats: BigIntStats): FileStat {
  return {
    kind: kindOf(stats),
    bytes: Number(stats.size),
    mode: Number(stats.mode & 0o7777n),
    owner: Number(stats.uid),
    group: Number(stats.gid),
    modified: Number(stats.mtimeMs),
    stamp: `${stats.dev}:${stats.ino}:${stats.size}:${stats.mtimeNs}:${stats.ctimeNs}`,
  };
}

function kindOf(entry: BigIntStats | Dirent<Buffer>): EntryKind {
  if (entry.isFile()) return 'file';
  if (entry.isDirectory()) return 'folder';
  return entry.isSymbolicLink() ? 'link' : 'other';
}
