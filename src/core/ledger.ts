import type { Action } from './action.ts';
import type { Claim } from './claim.ts';
import type { ConnectionId } from './connection.ts';
import type { PartId, Ref } from './part.ts';
import type { Path } from './place.ts';
import type { Hazard, Join, PartUse, StepId } from './step.ts';
import type { TermMention } from './term.ts';

/** Time since the first step, in minutes as the steps tell it. */
export interface Clock {
  readonly hands: number;
  readonly wait: number;
  /** Steps so far that tell no time. */
  readonly untold: number;
}

/** What the simulated first-time builder has, has made and has been told. */
export interface State {
  /** Pieces (or units) of each part not yet used. */
  readonly bag: Readonly<Record<PartId, number>>;
  /** Tools on the table. */
  readonly tools: readonly string[];
  /** Connections and sub-assemblies made so far. */
  readonly made: readonly (ConnectionId | string)[];
  /** Code on each board: path, and the board where it is named. */
  readonly loaded: readonly string[];
  readonly powered: boolean;
  /** The side that faces the builder, as last declared; null until a step declares one. */
  readonly side: string | null;
  /** Cautions heard so far. */
  readonly warned: readonly Hazard[];
  /** Words of the trade explained so far. */
  readonly explained: readonly string[];
  readonly clock: Clock;
}

/** Why the builder cannot go on as told, or ends up elsewhere than meant. */
export type Stop = { readonly step: StepId | null; readonly claim: Claim<unknown> | null } & (
  | { readonly kind: 'part-not-listed'; readonly use: PartUse }
  | {
      readonly kind: 'part-used-up';
      readonly use: PartUse;
      readonly part: PartId;
      /** Pieces (or units) left when the step began to take them, and how many it takes. */
      readonly had: number;
      readonly wanted: number;
    }
  | { readonly kind: 'part-left-over'; readonly part: PartId; readonly left: number; readonly listed: number }
  /** Taken off by this step, wired in the wiring table, and put back by no later step. */
  | { readonly kind: 'part-taken-away'; readonly part: PartId; readonly ref: Ref }
  | { readonly kind: 'tool-not-listed'; readonly tool: string }
  | { readonly kind: 'tool-never-used'; readonly tool: string }
  | { readonly kind: 'connection-not-in-wiring'; readonly join: Join; readonly nearest: ConnectionId | null }
  | { readonly kind: 'connection-never-made'; readonly connection: ConnectionId }
  | { readonly kind: 'connection-made-twice'; readonly join: Join; readonly before: StepId }
  /** Taken away by this step though the wiring table has it, and made again by no later one. */
  | { readonly kind: 'connection-taken-away'; readonly connection: ConnectionId }
  | { readonly kind: 'part-not-in-place'; readonly join: Join; readonly part: PartId; readonly arrives: StepId | null }
  | { readonly kind: 'assembly-not-made'; readonly name: string; readonly arrives: StepId | null }
  | {
      readonly kind: 'assembly-used-up';
      readonly name: string;
      readonly had: number;
      readonly wanted: number;
      readonly maker: StepId;
      /** Whether the step that makes it says how many. */
      readonly counted: boolean;
    }
  | { readonly kind: 'assembly-never-used'; readonly name: string }
  /** Needed by builders who never had it; `only` is the variant that brings it, null where an optional step does. */
  | { readonly kind: 'brought-for-some'; readonly what: string; readonly brings: StepId; readonly only: string | null }
  | { readonly kind: 'variant-named-once'; readonly name: string; readonly like: string; readonly other: Claim<string> }
  | { readonly kind: 'side-changes-untold'; readonly from: string; readonly to: string; readonly since: StepId }
  | { readonly kind: 'removed-before-made'; readonly what: string; readonly arrives: StepId }
  /** Put in for a while by the words of the step, and taken away by none. */
  | { readonly kind: 'temporary-stays' }
  | { readonly kind: 'code-missing'; readonly path: Path }
  | { readonly kind: 'code-not-loaded'; readonly text: string; readonly onto: Ref | null; readonly arrives: StepId }
  | { readonly kind: 'code-never-loaded'; readonly paths: readonly Path[] }
  /** `since` is the step that switched on. */
  | { readonly kind: 'powered-while-working'; readonly join: Join | PartUse; readonly since: StepId }
  /** The same, read from the words of the step; `since` may be read as well. */
  | {
      readonly kind: 'told-to-work-under-power';
      readonly action: Action;
      readonly since: StepId;
      readonly on: Claim<unknown>;
    }
  | { readonly kind: 'measured-unpowered'; readonly text: string }
  /** Ohms read while the power is on. */
  | { readonly kind: 'resistance-under-power'; readonly text: string; readonly since: StepId }
  /** The first check between supply and ground comes after the power was on. */
  | { readonly kind: 'checked-after-power'; readonly text: string; readonly since: StepId; readonly on: Claim<unknown> }
  /** Something must dry, cure or charge, and no time is told. */
  | { readonly kind: 'wait-untold'; readonly what: string }
  /** Words of the trade that steps use before they are explained, each where it first stands. */
  | { readonly kind: 'words-unexplained'; readonly words: readonly TermMention[] }
);

/** How much of the build the rehearsal stands on, each from 0 to 1; null where there is nothing to cover. */
export interface Coverage {
  readonly parts: number | null;
  readonly connections: number | null;
  readonly tools: number | null;
}

/** One step with what the builder has before and after it. A step for everyone is told as the first variant meets it. */
export interface LedgerStep {
  readonly step: StepId;
  readonly before: State;
  readonly after: State;
}

/** The guide, executed: once through for each variant. */
export interface Ledger {
  readonly steps: readonly LedgerStep[];
  /** Variants as first written; empty where every builder follows all steps. */
  readonly variants: readonly string[];
  readonly coverage: Coverage;
  readonly stops: readonly Stop[];
}
