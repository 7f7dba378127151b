import type { Judged } from '#core/assembled.ts';
import type { Basis } from '#core/claim.ts';
import type { Edit } from '#core/edit.ts';
import type { Audience, Outcome, Weight } from '#core/finding.ts';
import type { Key } from '#core/key.ts';
import type { Path, Place } from '#core/place.ts';
import type { FactName } from './factNames.ts';

/** A folder in small: text by path, or the bytes of a picture. */
export type ExampleFiles = Readonly<Record<Path, string | Uint8Array>>;

/** A finding that an example expects: where one of its sides lies, and words that its message holds. */
export interface Expected {
  readonly file: Path;
  /** Absent for a finding about a whole file. */
  readonly line?: number;
  readonly column?: number;
  readonly words?: string;
}

/** Folders on which a check must keep silent, having looked (`outcome` where it must not even look), and on which it must speak. */
export interface Examples {
  readonly passes: readonly { readonly title: string; readonly files: ExampleFiles; readonly outcome?: Outcome }[];
  readonly fails: readonly {
    readonly title: string;
    readonly files: ExampleFiles;
    readonly expect: readonly Expected[];
  }[];
}

/** What a check found, before it has a name. */
export interface FindingDraft {
  /** What it is about; the finding's id is made of them. */
  readonly subjects: readonly [Key, ...Key[]];
  /** Tells findings on the same subjects apart, such as the words found. */
  readonly mark?: string;
  /** The witnesses, the one that a builder comes to first in front. */
  readonly sides: readonly Place[];
  readonly message: string;
  readonly consequence: string;
  readonly remedy: string;
  readonly mend?: Edit | null;
  /** Where it differs from the check's own. */
  readonly weight?: Weight;
  /** The weakest basis among its witnesses. What was only read or proposed halts nobody. */
  readonly basis?: Basis;
}

/** The check looked, but lacks something that would settle the question for some of its subjects. */
export interface CannotTell {
  readonly cannotTell: string;
}

/** One check: what it looks for, why that matters, what it needs, and examples that prove it. */
export interface Check {
  /** Plain words with hyphens. */
  readonly id: string;
  /** What it holds the build to, as a sentence. */
  readonly title: string;
  readonly weight: Weight;
  readonly audience: Audience;
  /** What goes wrong in replications without it. */
  readonly why: string;
  /** A public source, or 'common practice'. */
  readonly basis: string;
  /** Without a subject it does not apply; without a witness it cannot tell. */
  readonly needs: { readonly subject: readonly FactName[]; readonly witnesses: readonly FactName[] };
  /** Findings of it come from the simulated builder. */
  readonly rehearsal?: true;
  /** A builder who follows what it finds can break a part or be hurt: such findings come first. */
  readonly grave?: true;
  /** Dismissing it does not lower it: what it guards cannot be taken back. */
  readonly firm?: true;
  /** It reads sentences by English words, so that it cannot tell of a guide in another language. */
  readonly words?: 'English';
  readonly run: (judged: Judged) => Iterable<FindingDraft | CannotTell>;
  readonly examples: Examples;
}

/** Declares a check. The registry finds it by its file. */
export function defineCheck(check: Check): Check {
  return check;
}
