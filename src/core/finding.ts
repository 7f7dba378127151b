import type { Edit } from './edit.ts';
import type { Key } from './key.ts';
import type { Place } from './place.ts';

/** `halts` stops a builder or breaks the build, `slows` costs time, `tidy` costs looks. */
export type Weight = 'halts' | 'slows' | 'tidy';

/** Whom a finding concerns: who follows the guide, or who publishes it. */
export type Audience = 'builder' | 'publisher';

/** One thing that a check found. */
export interface Finding {
  /** Made of the check and its subjects; survives edits elsewhere. */
  readonly id: string;
  readonly check: string;
  readonly weight: Weight;
  readonly audience: Audience;
  readonly subjects: readonly Key[];
  /** The witnesses, with a digest of what each says. */
  readonly sides: readonly { readonly place: Place; readonly digest: string }[];
  /** What was found and what was expected. */
  readonly message: string;
  /** What happens to a builder who follows it. */
  readonly consequence: string;
  /** The smallest thing to do about it. */
  readonly remedy: string;
  readonly mend: Edit | null;
  /** The reason for which it was accepted once, when a side has changed since; null otherwise. */
  readonly lapsed: string | null;
}

export type Outcome = 'ran' | 'does-not-apply' | 'cannot-tell' | 'failed';

/** What became of one check. `why` is empty for `ran`. */
export interface CheckRun {
  readonly check: string;
  readonly outcome: Outcome;
  readonly why: string;
}

/** `not-enough-told` where the text tells too little for the rehearsal to stand on. */
export type Verdict = 'buildable' | 'halts' | 'not-enough-told';
