import type { Path } from '#core/place.ts';

/** What may be asked about the folder. */
export interface SourceContext {
  /** The path as spelled on disk; null where there is no such file. */
  fileExists(path: Path): Path | null;
  /** The same, where capitals and small letters count as one. */
  fileNearly(path: Path): Path | null;
}
