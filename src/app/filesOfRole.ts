import type { FileEntry } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import type { Role, RoleName } from '#core/settings.ts';

/** The files that play a role, in the order of its places; the files of a folder in the order of a human reader. */
export function filesOfRole(roles: readonly Role[], role: RoleName, files: readonly FileEntry[]): Path[] {
  const places = roles.find((entry) => entry.role === role)?.places ?? [];
  const found = new Set<Path>();
  for (const place of places) {
    const path = fileOfPlace(place);
    const inFolder = files
      .map((file) => file.path)
      .filter((file) => file === path || file.startsWith(path.endsWith('/') ? path : `${path}/`))
      .sort(naturalOrder.compare);
    for (const file of inFolder) found.add(file);
  }
  return [...found];
}

/** The file or folder of a place such as `guide.md#parts`. */
export function fileOfPlace(place: string): Path {
  return (place.split('#')[0] ?? place).replace(/^\.\//, '');
}

/** The section that a place names; null for a whole file. */
export function sectionOfPlace(place: string): string | null {
  const at = place.indexOf('#');
  return at < 0 ? null : place.slice(at + 1);
}

// '2-wiring' before '10-test': file names are numbered for people.
const naturalOrder = new Intl.Collator('en', { numeric: true, sensitivity: 'variant' });
