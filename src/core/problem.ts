import type { Place } from './place.ts';

/** Something in the maker's files that could not be read as meant. The rest of the file was read. */
export interface Problem {
  readonly place: Place;
  /** What was found, and what was expected instead. */
  readonly message: string;
  /** What to do about it. */
  readonly remedy: string;
}
