import type { Path, TextPlace } from './place.ts';

/** One dated note from the bench. */
export interface LogNote {
  /** ISO 8601 date or date and time; null where the log does not date it. */
  readonly at: string | null;
  readonly text: string;
  readonly mistake: string | null;
  readonly cause: string | null;
  readonly remedy: string | null;
  readonly reading: string | null;
  /** The step it speaks of, as written. */
  readonly step: string | null;
  readonly file: Path;
  readonly place: TextPlace;
}
