import path from 'node:path';

/** The deepest folder that holds all files. */
export function commonFolder(files: readonly string[]): string {
  const folders = files.map((file) => path.dirname(path.resolve(file)).split(path.sep));
  const [first = []] = folders;
  const depth = first.findIndex((step, at) => folders.some((folder) => folder[at] !== step));
  return (depth < 0 ? first : first.slice(0, depth)).join(path.sep) || path.sep;
}
