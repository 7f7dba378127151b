import type { Action } from './action.ts';
import type { Claim } from './claim.ts';
import type { PinUse } from './code.ts';
import type { Endpoint } from './connection.ts';
import type { FoundHazard } from './hazard.ts';
import type { PartId, Ref } from './part.ts';
import type { Path, TextPlace } from './place.ts';
import type { Problem } from './problem.ts';
import type { Proposal } from './proposal.ts';
import type { Quantity } from './quantity.ts';
import type { StepFacts, StepId } from './step.ts';
import type { TermMention } from './term.ts';

/** A value stated for a part outside the parts list. */
export interface ValueMention {
  readonly part: PartId;
  readonly ref: Ref;
  readonly value: Quantity;
  /** Told by the colour bands of the part, or by the code printed on it; null where the text states the value. */
  readonly marked: 'bands' | 'code' | null;
}

/** A pin of a part spoken of in the guide's prose, such as 'D5 of U1' or `U1.D5`. */
export interface PinMention {
  readonly end: Endpoint;
  /** The other end, where the same words name one. */
  readonly other: Endpoint | null;
  readonly step: StepId | null;
}

/** The board on which code runs, and the files that run on it. */
export interface Controller {
  readonly part: PartId;
  readonly ref: Ref;
  readonly files: readonly Path[];
}

/** A pin that code drives or reads on a board. */
export interface DrivenPin {
  readonly ref: Ref;
  readonly pin: string;
  readonly name: string | null;
  readonly uses: readonly PinUse[];
  readonly group: string | null;
  readonly place: TextPlace;
  readonly usedAt: readonly TextPlace[];
}

/** The language that the guide's prose is in. */
export interface GuideLanguage {
  /** As BCP 47 has it, such as `de`, or as the settings write it; null where too few words tell. */
  readonly code: string | null;
  /** `stated` by the settings, or `read` from the words. */
  readonly known: 'stated' | 'read' | 'unknown';
}

/** What the records say when held together. */
export interface Facts {
  readonly language: GuideLanguage;
  readonly steps: Readonly<Record<StepId, StepFacts>>;
  readonly controllers: readonly Claim<Controller>[];
  readonly drivenPins: readonly DrivenPin[];
  readonly values: readonly Claim<ValueMention>[];
  readonly pins: readonly Claim<PinMention>[];
  /**
   * Work at the bench that the prose speaks of, in reading order. In a guide that is known to be in another language
   * than English none is found, nor a term, a temporary or a wait.
   */
  readonly actions: readonly Action[];
  /**
   * Hazards that the build brings with it, and what the guide says of them; for a guide in another language only the
   * grave ones that lists and declared facts hold.
   */
  readonly hazards: readonly FoundHazard[];
  /** What steps seem to hold but do not declare, in reading order. */
  readonly proposals: readonly Proposal[];
  /** Words of the trade in the guide's text, used or explained, in reading order. */
  readonly terms: readonly TermMention[];
  /** Sentences that tell to put something in for a while only. */
  readonly temporaries: readonly { readonly step: StepId; readonly place: TextPlace }[];
  /** Sentences that leave something to dry, cure or charge and tell no time anywhere in their step. */
  readonly openWaits: readonly { readonly step: StepId; readonly what: string; readonly place: TextPlace }[];
  /** Facts in the text that could not be read as their label promises. */
  readonly problems: readonly Problem[];
}
