export type EntryKind = 'file' | 'folder' | 'link' | 'other';

/** One name in a folder, as the bytes that the disk holds. */
export interface FolderEntry {
  readonly name: Uint8Array;
  readonly kind: EntryKind;
}

export interface FileStat {
  readonly kind: EntryKind;
  readonly bytes: number;
  /** Permission bits. */
  readonly mode: number;
  readonly owner: number;
  readonly group: number;
  /** Milliseconds since 1970 of the last change of content. */
  readonly modified: number;
  /** Differs whenever the content may have changed. */
  readonly stamp: string;
}

export interface OpenFile {
  /** Reads at `position`; fewer bytes than asked, or 0 at the end, may come back. */
  read(into: Uint8Array, position: number): Promise<number>;
  /** Writes at the current end of what was written; may take fewer bytes than given. */
  write(bytes: Uint8Array): Promise<number>;
  stat(): Promise<FileStat>;
  truncate(bytes: number): Promise<void>;
  setMode(mode: number): Promise<void>;
  setOwner(owner: number, group: number): Promise<void>;
  /** Returns once the content is on the disk. */
  flush(): Promise<void>;
  close(): Promise<void>;
}

/** The few calls on a disk that a folder needs. Paths are absolute; errors carry the `code` of the system. */
export interface FileSystem {
  list(folder: string): Promise<readonly FolderEntry[]>;
  /** Follows links. */
  stat(path: string): Promise<FileStat>;
  /** Does not follow links. */
  statLink(path: string): Promise<FileStat>;
  realPath(path: string): Promise<string>;
  /** `create` fails where something is there already; `append` creates what is not there. */
  open(path: string, how: 'read' | 'create' | 'append'): Promise<OpenFile>;
  rename(from: string, to: string): Promise<void>;
  removeFile(path: string): Promise<void>;
  removeFolder(path: string): Promise<void>;
  /** Fails where the parent is missing. */
  makeFolder(path: string): Promise<void>;
  /** Puts the names of a folder on the disk, where the system can. */
  flushFolder(path: string): Promise<void>;
}

/** The `code` of a system error, such as `ENOENT`; undefined for any other value. */
export function codeOf(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}
