import type { Claim } from './claim.ts';
import type { ConnectionId, Endpoint } from './connection.ts';
import type { PartId, Ref } from './part.ts';
import type { Path, TextPlace } from './place.ts';
import type { Amount } from './quantity.ts';
import type { Block, PictureRef } from './text.ts';

/** Slug of the heading; a repeat takes its parent heading along. Never a number. */
export type StepId = string;

/** Labels that a step's list of facts may open with. */
export const factLabels = [
  'parts',
  'tools',
  'connects',
  'removes',
  'makes',
  'code',
  'power',
  'time',
  'side',
  'optional',
  'variant',
  'irreversible',
  'measure',
  'expect',
  'danger',
  'warning',
  'caution',
  'notice',
] as const;

export type FactLabel = (typeof factLabels)[number];

/** One labelled fact as written: `value` is the item's first source line after the label. */
export interface WrittenFact {
  readonly label: FactLabel;
  readonly value: string;
  /** The value, without the label. */
  readonly place: TextPlace;
}

/** A heading of the guide with what stands under it, up to the next heading. */
export interface Section {
  readonly id: StepId;
  readonly heading: string;
  readonly depth: number;
  /** Heading texts above this one, outermost first. */
  readonly parents: readonly string[];
  readonly role: 'title' | 'step' | 'parts' | 'tools' | 'prose';
  readonly file: Path;
  /** The heading's words; the start of the file for text before any heading. */
  readonly place: TextPlace;
  readonly blocks: readonly Block[];
  readonly pictures: readonly PictureRef[];
  /** Empty unless the section opens with a list of facts; that list is not among `blocks`. */
  readonly facts: readonly WrittenFact[];
  /** Digest of content, independent of the heading. */
  readonly signature: string;
}

/** The guide's text in reading order. */
export interface Instructions {
  readonly title: string | null;
  readonly sections: readonly Section[];
}

/** A part taken up by a step; `part` is null where the list does not hold what is named. */
export interface PartUse {
  readonly named: string;
  readonly part: PartId | null;
  /** The reference used, where one was named. */
  readonly ref: Ref | null;
  readonly amount: Amount;
}

/** A connection named by a step; `connection` is null where the wiring table does not hold it. */
export interface Join {
  readonly from: Endpoint;
  readonly to: Endpoint;
  readonly id: ConnectionId;
  readonly connection: ConnectionId | null;
}

export const signalWords = ['danger', 'warning', 'caution', 'notice'] as const;

/** Signal words by their meaning in ANSI Z535.4, from the gravest. */
export type SignalWord = (typeof signalWords)[number];

export interface Hazard {
  readonly word: SignalWord;
  readonly message: string;
}

/** Where to probe and what to read; `expect` is the condition as written, such as `> 1 kΩ`. */
export interface Measure {
  readonly between: readonly string[];
  readonly expect: string;
  readonly text: string;
}

export type PowerState = 'on' | 'off';

/** What a step says of itself, resolved against parts, tools, wiring and code. */
export interface StepFacts {
  readonly uses: readonly Claim<PartUse>[];
  readonly tools: readonly Claim<string>[];
  readonly makes: readonly Claim<string>[];
  readonly connects: readonly Claim<Join>[];
  readonly removes: readonly Claim<Join | PartUse>[];
  readonly loads: readonly Claim<{ readonly path: Path; readonly onto: Ref | null; readonly exists: boolean }>[];
  /** `during` holds through the step; `after` is set where the step switches at its end. */
  readonly power: Claim<{ readonly during: PowerState; readonly after: PowerState }> | null;
  readonly hazards: readonly Claim<Hazard>[];
  readonly measures: readonly Claim<Measure>[];
  readonly expects: readonly Claim<string>[];
  /** Minutes: hands on, and waiting. */
  readonly minutes: Claim<{ readonly hands: number; readonly wait: number }> | null;
  readonly side: Claim<string> | null;
  readonly optional: Claim<string> | null;
  readonly variant: Claim<string> | null;
  readonly irreversible: Claim<string> | null;
}

/** What a step without facts declares. */
export const noFacts: StepFacts = {
  uses: [],
  tools: [],
  makes: [],
  connects: [],
  removes: [],
  loads: [],
  power: null,
  hazards: [],
  measures: [],
  expects: [],
  minutes: null,
  side: null,
  optional: null,
  variant: null,
  irreversible: null,
};

/** True for a join, false for a part use: what `removes` takes away. */
export function isJoin(value: Join | PartUse): value is Join {
  return 'from' in value;
}
