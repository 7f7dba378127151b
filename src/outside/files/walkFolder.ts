import path from 'node:path';
import type { Listing } from '#app/ports.ts';
import type { FileEntry } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import { codePointOrder } from './codePointOrder.ts';
import { failureOf } from './failureOf.ts';
import { codeOf, type FileSystem, type FolderEntry } from './fileSystem.ts';

type Skip = (path: Path, isFolder: boolean) => string | null;

interface Folder {
  readonly path: Path;
  readonly absolute: string;
  /** Where it really lies. */
  readonly real: string;
}

interface Link extends Folder {
  /** The folder that the link stands in, where it really lies. */
  readonly standsIn: string;
}

/** How many files are looked at side by side. */
const width = 64;

/**
 * All files below a folder. Real folders are listed first and links after them, so that a folder is listed by
 * its own path rather than by a link to it. Only the names of one folder at a time are held besides the result.
 */
export async function walkFolder(root: string, system: FileSystem, skip: Skip): Promise<Listing> {
  const walk = new Walk(system, skip);
  await walk.run(root);
  return walk.listing();
}

class Walk {
  private readonly system: FileSystem;
  private readonly skip: Skip;
  private readonly files: FileEntry[] = [];
  private readonly leftOut: { path: Path; why: string }[] = [];
  private readonly visited = new Set<string>();
  private readonly links: Link[] = [];

  constructor(system: FileSystem, skip: Skip) {
    this.system = system;
    this.skip = skip;
  }

  async run(root: string): Promise<void> {
    const real = await this.system.realPath(root).catch((error: unknown) => {
      throw failureOf(error, root, 'read');
    });
    await this.visitTree({ path: '', absolute: root, real });
    // A linked folder may hold further links: they wait for the next round.
    while (this.links.length > 0) {
      const round = this.links.splice(0).sort((a, b) => codePointOrder(a.path, b.path));
      for (const link of round) await this.visitLink(link, real);
    }
  }

  listing(): Listing {
    const byPath = (a: { path: Path }, b: { path: Path }) => codePointOrder(a.path, b.path);
    return { files: this.files.sort(byPath), leftOut: this.leftOut.sort(byPath) };
  }

  private async visitTree(top: Folder): Promise<void> {
    const waiting = [top];
    for (let folder = waiting.pop(); folder; folder = waiting.pop()) {
      if (this.visited.has(folder.real)) continue;
      this.visited.add(folder.real);
      const entries = await this.entriesOf(folder);
      for (let i = 0; i < entries.length; i += width) {
        const some = entries.slice(i, i + width);
        const found = await Promise.all(some.map((entry) => this.visitEntry(folder, entry)));
        waiting.push(...found.filter((inner) => inner !== null));
      }
    }
  }

  private async entriesOf(folder: Folder): Promise<readonly FolderEntry[]> {
    try {
      return await this.system.list(folder.absolute);
    } catch (error) {
      const failure = failureOf(error, folder.path || folder.absolute, 'read');
      if (folder.path === '') throw failure;
      this.leave(folder.path, `the folder could not be opened: ${failure.message}`);
      return [];
    }
  }

  /** The folder that an entry is, to be visited; null for anything else. */
  private async visitEntry(folder: Folder, entry: FolderEntry): Promise<Folder | null> {
    const name = nameOf(entry.name);
    const inner = folder.path === '' ? name.text : `${folder.path}/${name.text}`;
    if (!name.valid) {
      this.leave(inner, 'its name is not valid UTF-8; rename it');
      return null;
    }
    const absolute = path.join(folder.absolute, name.text);
    const found = { path: inner, absolute, real: path.join(folder.real, name.text) };
    switch (entry.kind) {
      case 'folder':
        return this.passes(inner, true) ? found : null;
      case 'file':
        if (this.passes(inner, false)) await this.addFile(inner, absolute);
        return null;
      case 'link':
        await this.follow(inner, absolute, folder.real);
        return null;
      case 'other':
        this.leave(inner, 'not an ordinary file');
        return null;
    }
  }

  private passes(path: Path, isFolder: boolean): boolean {
    const why = this.skip(path, isFolder);
    if (why !== null) this.leave(path, why);
    return why === null;
  }

  private async addFile(path: Path, absolute: string): Promise<void> {
    try {
      const { bytes } = await this.system.stat(absolute);
      this.files.push({ path, bytes });
    } catch (error) {
      this.leave(path, `it could not be looked at: ${failureOf(error, path, 'read').message}`);
    }
  }

  private async follow(path: Path, absolute: string, standsIn: string): Promise<void> {
    try {
      const { kind, bytes } = await this.system.stat(absolute);
      if (kind === 'other') this.leave(path, 'a link to something that is not an ordinary file');
      else if (!this.passes(path, kind === 'folder')) return;
      else if (kind === 'file') this.files.push({ path, bytes });
      else this.links.push({ path, absolute, real: await this.system.realPath(absolute), standsIn });
    } catch (error) {
      const code = codeOf(error);
      if (code === 'ELOOP') this.leave(path, 'a link that leads round in a circle');
      else if (code === 'ENOENT') this.leave(path, 'a link that leads nowhere');
      else this.leave(path, `a link that could not be followed: ${failureOf(error, path, 'read').message}`);
    }
  }

  private async visitLink(link: Link, realRoot: string): Promise<void> {
    if (holds(link.real, realRoot) || holds(link.real, link.standsIn)) {
      this.leave(link.path, 'a link to a folder that holds it; following it would never end');
    } else if (this.visited.has(link.real)) {
      this.leave(link.path, 'a link to a folder that is listed already');
    } else {
      await this.visitTree(link);
    }
  }

  private leave(path: Path, why: string): void {
    this.leftOut.push({ path, why });
  }
}

function holds(folder: string, inner: string): boolean {
  return inner === folder || inner.startsWith(folder.endsWith(path.sep) ? folder : folder + path.sep);
}

function nameOf(bytes: Uint8Array): { text: string; valid: boolean } {
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  const again = new TextEncoder().encode(text);
  const valid = again.length === bytes.length && again.every((byte, i) => byte === bytes[i]);
  return { text, valid };
}
