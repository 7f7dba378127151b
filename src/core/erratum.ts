import type { Path, TextPlace } from './place.ts';

/** One thing that a published guide had wrong. Open until `fixed` names the edition that has it right. */
export interface Erratum {
  /** ISO 8601 date; null where none is given. */
  readonly at: string | null;
  readonly wrong: string;
  readonly right: string | null;
  /** The step and the part it is about, as written. */
  readonly step: string | null;
  readonly part: string | null;
  /** The editions that have it wrong, as written. */
  readonly editions: string | null;
  /** Who reported it. */
  readonly by: string | null;
  readonly fixed: string | null;
  readonly file: Path;
  readonly place: TextPlace;
}
