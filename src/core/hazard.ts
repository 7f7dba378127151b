import type { Basis } from './claim.ts';
import type { Place, TextPlace } from './place.ts';
import type { SignalWord, StepId } from './step.ts';

/** Name of a hazard in the cautions library, such as `hot-iron`. */
export type HazardId = string;

/** Words of the guide that speak of a hazard. */
export interface HeardCaution {
  /** Null where it is said in plain words, without a signal word. */
  readonly word: SignalWord | null;
  readonly message: string;
  readonly place: TextPlace;
  readonly step: StepId | null;
  /** Whether a builder reads it before the work that it is about. */
  readonly when: 'before' | 'after';
}

/**
 * How well the guide warns of a hazard; `late` where it does so only after the work, `cannot-tell` where it is in
 * another language than cautions are read in.
 */
export type HazardCover = 'covered' | 'uncovered' | 'late' | 'weak' | 'cannot-tell';

/** A hazard that the build brings with it. */
export interface FoundHazard {
  readonly hazard: HazardId;
  /** The step in which it first bites; null where no step was found to. */
  readonly step: StepId | null;
  /** What it was found by, the words at which it first bites in front. */
  readonly places: readonly [Place, ...Place[]];
  readonly basis: Basis;
  /** What it was found by, in words. */
  readonly why: string;
  readonly cover: HazardCover;
  /** Cautions that speak of it, in reading order. */
  readonly cautions: readonly HeardCaution[];
}
