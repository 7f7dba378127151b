import type { Hash, Path, Span } from './place.ts';

/** A change to one text file: spans of the version `base`, ascending and disjoint, and what takes their place. */
export interface Edit {
  readonly file: Path;
  readonly base: Hash;
  readonly changes: readonly { readonly span: Span; readonly text: string }[];
  readonly why: string;
}
