import type { FileEntry } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
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
  const byForm = new Map(files.map(({ path }) => [path.normalize('NFC'), path]));
  return (path) => byForm.get(path.normalize('NFC')) ?? null;
}
