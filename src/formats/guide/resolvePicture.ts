import type { Path } from '#core/place.ts';

export interface PictureFolders {
  /** The path as spelled on disk where the folder holds just that file; null otherwise. */
  readonly fileExists: (path: Path) => Path | null;
  /** Folders that a site generator may resolve picture addresses from. */
  readonly pictureRoots: readonly Path[];
}

const elsewhere = /^(?:[a-z][a-z0-9+.-]+:|\/\/)/i;

/**
 * The file that a picture address in `file` means: looked for beside the text, in the picture folders, then in each
 * folder above the text. `path` is the likeliest file where none is found, null for an address on the web.
 */
export function resolvePicture(
  url: string,
  file: Path,
  folders: PictureFolders,
): { path: Path | null; exists: boolean } {
  const written = withoutTemplate(url.trim());
  if (elsewhere.test(written)) return { path: null, exists: false };
  const spellings = spellingsOf(written);
  const beside = folderOf(file);
  const fromRoot = /^[\\/]/.test(written);
  const starts = [...(fromRoot ? [] : [beside]), ...folders.pictureRoots, ...foldersAbove(beside)];
  for (const start of starts) {
    for (const spelling of spellings) {
      const candidate = joined(start, spelling);
      const found = candidate === null ? null : folders.fileExists(candidate);
      if (found !== null) return { path: found, exists: true };
    }
  }
  const likely = spellings[0] ?? written;
  return { path: joined(fromRoot ? '' : beside, likely) ?? likely, exists: false };
}

/** `{{ site.root }}/photos/a.jpg` and `{{ "photos/a.jpg" | relative }}`: the path that the template ends in. */
function withoutTemplate(url: string): string {
  return url.replace(/\{\{.*?\}\}/g, (template) => /["']([^"']*)["']/.exec(template)?.[1] ?? '');
}

/** Decoded first, then as written; each also without a query or fragment and with slashes turned. */
function spellingsOf(url: string): string[] {
  const plain = url.replace(/[?#].*$/s, '');
  const spellings = [decoded(plain), plain, decoded(url), url, decoded(plain).replaceAll('\\', '/')];
  return [...new Set(spellings)].filter((spelling) => spelling !== '');
}

function decoded(url: string): string {
  try {
    return decodeURIComponent(url);
  } catch {
    return url;
  }
}

function folderOf(path: Path): Path {
  return path.includes('/') ? path.slice(0, path.lastIndexOf('/')) : '';
}

/** The folder itself and those above it, up to the root of the build. */
function foldersAbove(folder: Path): Path[] {
  const folders = [folder];
  for (let at = folder; at !== ''; at = folderOf(at)) folders.push(folderOf(at));
  return folders;
}

/** Both as one normalised path; null where it climbs out of the build folder. */
function joined(folder: Path, path: string): Path | null {
  const segments: string[] = [];
  for (const segment of `${folder}/${path}`.split('/')) {
    if (segment === '..') {
      if (segments.pop() === undefined) return null;
    } else if (segment !== '' && segment !== '.') segments.push(segment);
  }
  return segments.length === 0 ? null : segments.join('/');
}
