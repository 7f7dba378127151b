import type { TextPlace } from './place.ts';
import type { StepId } from './step.ts';

/** A word of the trade in the guide's text. */
export interface TermMention {
  /** Its plain name in the table of terms, or as the maker's own glossary has it. */
  readonly term: string;
  /** What it means, in a sentence. */
  readonly meaning: string;
  /** Only used; explained here; or held by a glossary or asked as a skill, so that it is clear from the start. */
  readonly told: 'used' | 'explained' | 'beforehand';
  /** The step in whose text it stands; null for text between steps. */
  readonly step: StepId | null;
  readonly place: TextPlace;
}
