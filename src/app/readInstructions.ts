import type { FileEntry } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { remember } from '#core/remember.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { Instructions } from '#core/step.ts';
import { readGuide } from '#formats/guide/readGuide.ts';
import { looksLike } from '#formats/roles/fileKind.ts';

/** The guide's text over all its files; pictures are resolved against the folder's files, case-exact. */
export function readInstructions(
  sources: readonly SourceText[],
  files: readonly FileEntry[],
): { instructions: Instructions; problems: Problem[] } {
  return readGuide(
    sources.filter(({ file }) => looksLike('prose', file)),
    { fileExists: fileFinder(files) },
  );
}

/** Finds a path as it is spelled on disk, whichever way its accents are composed. */
export function fileFinder(files: readonly FileEntry[]): (path: Path) => Path | null {
  return finderAmong(files.map(({ path }) => path).join('\0'));
}

/** The same finder for the same files, so that what was found by it is still known. */
const finderAmong = remember((paths): ((path: Path) => Path | null) => {
  const byForm = new Map(paths.split('\0').map((path) => [path.normalize('NFC'), path]));
  return (path) => byForm.get(path.normalize('NFC')) || null;
}, 5);

/** Finds a path where capitals and small letters count as one. */
export function looseFinder(files: readonly FileEntry[]): (path: Path) => Path | null {
  const byForm = new Map(files.map(({ path }) => [path.toLowerCase().normalize('NFC'), path]));
  return (path) => byForm.get(path.toLowerCase().normalize('NFC')) ?? null;
}
