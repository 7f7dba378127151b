import { realpath, stat } from 'node:fs/promises';
import path from 'node:path';

/** What a request's target names. A folder is answered with the address that ends in a slash. */
export type Found =
  | { readonly is: 'file'; readonly path: string }
  | { readonly is: 'folder'; readonly location: string }
  | { readonly is: 'nothing' };

const nothing: Found = { is: 'nothing' };

/**
 * The file that a request's target names: below `root`, by real path too, no part of it hidden. A folder is its
 * `index.html`. Anything else is nothing.
 */
export async function findFile(root: string, target: string): Promise<Found> {
  const parts = partsOf(target);
  if (parts === null) return nothing;
  const wanted = path.join(root, ...parts);
  try {
    const real = await realpath(wanted);
    if (!isShown(root, real)) return nothing;
    const found = await stat(real);
    if (found.isDirectory()) return await folder(root, real, target);
    return found.isFile() && !pathOf(target).endsWith('/') ? { is: 'file', path: real } : nothing;
  } catch {
    return nothing;
  }
}

async function folder(root: string, real: string, target: string): Promise<Found> {
  const index = await realpath(path.join(real, 'index.html'));
  if (!isShown(root, index) || !(await stat(index)).isFile()) return nothing;
  if (pathOf(target).endsWith('/')) return { is: 'file', path: index };
  // Without the slash, the page's own links would be taken from the folder above.
  const name = pathOf(target).split('/').at(-1);
  return { is: 'folder', location: `./${name}/` };
}

function pathOf(target: string): string {
  return target.split(/[?#]/, 1)[0] ?? '';
}

/** The decoded parts of a path; null for one that is malformed, climbs, or names something hidden. */
function partsOf(target: string): string[] | null {
  const given = pathOf(target);
  if (!given.startsWith('/')) return null;
  try {
    const parts = given
      .split('/')
      .filter((part) => part !== '')
      .map(decodeURIComponent);
    return parts.every((part) => !part.startsWith('.') && !/[/\\\0]/.test(part)) ? parts : null;
  } catch {
    return null;
  }
}

function isShown(root: string, real: string): boolean {
  const inside = path.relative(root, real);
  return !path.isAbsolute(inside) && inside.split(path.sep).every((part) => !part.startsWith('.'));
}
