import type { Path } from '#core/place.ts';
import type { SourceContext } from './sourceContext.ts';

/**
 * The file of the build that an `#include` means, or null. Compilers look beside the including file first; then
 * the folders that build systems add are tried, from the nearest to the root.
 */
export function localInclude(from: Path, written: string, context: SourceContext): Path | null {
  const stem = written.replace(/^.*\//, '').replace(/\.\w+$/, '');
  return firstThere(from, context, (folder) => [
    `${folder}${written}`,
    `${folder}include/${written}`,
    `${folder}src/${written}`,
    `${folder}lib/${stem}/${written}`,
    `${folder}lib/${stem}/src/${written}`,
    `${folder}libraries/${stem}/${written}`,
    `${folder}libraries/${stem}/src/${written}`,
  ]);
}

/** The file of the build that a Python module is, or null. Boards look beside the program and in `lib`. */
export function localModule(from: Path, written: string, context: SourceContext): Path | null {
  const dots = /^\.*/.exec(written)?.[0].length ?? 0;
  const path = written.slice(dots).replaceAll('.', '/');
  if (path === '') return null;
  const inFolder = (folder: Path) => [
    `${folder}${path}.py`,
    `${folder}${path}/__init__.py`,
    `${folder}lib/${path}.py`,
    `${folder}lib/${path}/__init__.py`,
    `${folder}src/${path}.py`,
  ];
  if (dots === 0) return firstThere(from, context, inFolder);
  const folder = foldersAbove(from)[dots - 1];
  return folder === undefined
    ? null
    : (inFolder(folder)
        .map((candidate) => context.fileExists(candidate))
        .find((found) => found !== null) ?? null);
}

function firstThere(from: Path, context: SourceContext, candidates: (folder: Path) => Path[]): Path | null {
  for (const folder of foldersAbove(from)) {
    for (const candidate of candidates(folder)) {
      const path = withoutDots(candidate);
      const found = path === null ? null : context.fileExists(path);
      if (found !== null) return found;
    }
  }
  return null;
}

/** Folders from that of the file up to the root, each ending in a slash; the root is empty. */
function foldersAbove(file: Path): Path[] {
  const steps = file.split('/').slice(0, -1);
  return Array.from({ length: steps.length + 1 }, (_, i) =>
    steps
      .slice(0, steps.length - i)
      .map((step) => `${step}/`)
      .join(''),
  );
}

/** Null where the path leads out of the folder. */
function withoutDots(path: Path): Path | null {
  const steps: string[] = [];
  for (const step of path.split('/')) {
    if (step === '..') {
      if (steps.pop() === undefined) return null;
    } else if (step !== '.' && step !== '') steps.push(step);
  }
  return steps.join('/');
}
