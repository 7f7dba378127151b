import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { skipReason } from '#formats/roles/skipFile.ts';

const root = rootAbove(import.meta.dirname);
const here = path.join(root, 'tests/projects');
const demo = path.join(root, 'demo/tide-lamp');

/** Builds that were made with care, each by another maker with other habits; the demo is one of them. */
export const projectNames: readonly string[] = [
  'tide-lamp',
  ...readdirSync(here, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort(),
];

/** The files of a build by path: texts as text, pictures as bytes. */
export function readProject(name: string): Map<string, string | Uint8Array> {
  const root = name === 'tide-lamp' ? demo : path.join(here, name);
  return new Map(filesBelow(root, '').map((file) => [file, contentOf(path.join(root, file))]));
}

function filesBelow(root: string, folder: string): string[] {
  return readdirSync(path.join(root, folder), { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const file = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (entry.isDirectory()) return skipReason(file, true) === null ? filesBelow(root, file) : [];
      return file === 'history.jsonl' ? [] : [file];
    });
}

/** The checkout's root, from wherever this module runs: here, or bundled. */
function rootAbove(folder: string): string {
  const isRoot = existsSync(path.join(folder, 'tests/projects')) && existsSync(path.join(folder, 'package.json'));
  return isRoot ? folder : rootAbove(path.dirname(folder));
}

function contentOf(file: string): string | Uint8Array {
  return /\.(?:jpe?g|png|webp|heic)$/i.test(file) ? new Uint8Array(readFileSync(file)) : readFileSync(file, 'utf8');
}
