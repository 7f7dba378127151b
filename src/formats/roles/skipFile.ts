import type { Path } from '#core/place.ts';
import folders from './folders.json';

const vendored = new Set(folders.vendored);
const built = new Set(folders.built);
const notProduct = new Set(folders.notProduct);

/**
 * Why a file or folder is none of the maker's, or null where it may be: hidden ones, what package managers
 * put there, and what can be built again.
 */
export function skipReason(path: Path, isFolder: boolean): string | null {
  const name = path.slice(path.lastIndexOf('/') + 1);
  if (name.startsWith('.') && name !== '.env') return 'hidden';
  if (!isFolder) return null;
  if (vendored.has(name.toLowerCase())) return 'holds packages of others';
  if (built.has(name.toLowerCase())) return 'holds what can be built again';
  return null;
}

/** True for tests, examples and old copies: the maker's, but not what a builder loads. */
export function isBesideTheProduct(path: Path): boolean {
  return path
    .split('/')
    .slice(0, -1)
    .some((folder) => notProduct.has(folder.toLowerCase()));
}
