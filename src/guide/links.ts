import type { Path } from '#core/place.ts';
import type { BlockId, LinkTarget } from './guide.ts';

/** What links of the maker's text can lead to inside the guide. */
export interface LinkTargets {
  /** Block of each section and step, by the slug of its heading. */
  readonly sections: ReadonlyMap<string, BlockId>;
  /** Block of each published source file. */
  readonly code: ReadonlyMap<Path, BlockId>;
  /** Other files that come with the guide. */
  readonly published: ReadonlySet<Path>;
  /** Files of the build folder. */
  readonly files: ReadonlySet<Path>;
}

/**
 * Where a link written in `file` leads. Null for what no guide should carry: a scheme other than http, https
 * and mailto, or a path to nothing. A fragment that names no section is null too.
 */
export function resolveLink(url: string, file: Path, targets: LinkTargets): LinkTarget | null {
  if (isWebAddress(url)) return { kind: 'web', url };
  if (/^[a-z][a-z0-9+.-]*:/i.test(url) || url.startsWith('//') || url.startsWith('\\')) return null;
  const [written = '', fragment = ''] = url.split('#', 2);
  const section = targets.sections.get(decoded(fragment));
  if (section !== undefined) return { kind: 'block', id: section };
  const path = joinPath(folderOf(file), decoded(written.split('?', 1)[0] ?? ''));
  const code = targets.code.get(path);
  if (code !== undefined) return { kind: 'block', id: code };
  if (targets.published.has(path)) return { kind: 'file', path };
  return targets.files.has(path) ? { kind: 'unpublished', path } : null;
}

/** True for an absolute http, https or mailto address without characters that browsers skip over. */
export function isWebAddress(url: string): boolean {
  return /^(https?:\/\/[^\s\\]+|mailto:[^\s\\]+)$/i.test(url);
}

function folderOf(file: Path): string {
  return file.includes('/') ? file.slice(0, file.lastIndexOf('/')) : '';
}

function joinPath(folder: string, relative: string): Path {
  const parts = relative.startsWith('/') ? [] : folder.split('/').filter(Boolean);
  for (const part of relative.split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '' && part !== '.') parts.push(part);
  }
  return parts.join('/');
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
