import type { Basis } from './claim.ts';
import type { Key } from './key.ts';
import type { Place } from './place.ts';
import type { FactLabel, StepId } from './step.ts';

/** A fact that a step does not declare but seems to hold, put to the maker. It drives nothing until confirmed. */
export interface Proposal {
  readonly step: StepId;
  readonly label: FactLabel;
  /** The item as it would stand in the step's facts, such as `R1–R3`, `M3 screw × 4` or `soldering iron`. */
  readonly item: string;
  /** The listed thing that it speaks of; null where no list holds it. */
  readonly about: Key | null;
  readonly basis: Exclude<Basis, 'declared'>;
  /** From 0 to 1. */
  readonly confidence: number;
  /** The words that it rests on. */
  readonly places: readonly Place[];
  /** Why it is proposed, as a sentence for the maker. */
  readonly why: string;
  /** True where steps before take up all pieces that are listed: this one works on them, and takes none of its own. */
  readonly again: boolean;
}

/** Names a proposal for good: step, label, and the listed thing or else the item. */
export function proposalId({ step, label, item, about }: Proposal): string {
  const thing = about === null ? item : about.slice(about.indexOf(':') + 1);
  return `${step}/${label}/${thing.replace(/\s+/g, '-').toLowerCase()}`;
}
