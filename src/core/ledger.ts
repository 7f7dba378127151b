import type { Claim } from './claim.ts';
import type { ConnectionId } from './connection.ts';
import type { PartId, Ref } from './part.ts';
import type { Path } from './place.ts';
import type { Hazard, Join, PartUse, StepId } from './step.ts';

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
  /** Cautions heard so far. */
  readonly warned: readonly Hazard[];
  /** Words explained so far. */
  readonly explained: readonly string[];
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
  | { readonly kind: 'tool-not-listed'; readonly tool: string }
  | { readonly kind: 'connection-not-in-wiring'; readonly join: Join; readonly nearest: ConnectionId | null }
  | { readonly kind: 'connection-never-made'; readonly connection: ConnectionId }
  | { readonly kind: 'connection-made-twice'; readonly join: Join; readonly before: StepId }
  | { readonly kind: 'part-not-in-place'; readonly join: Join; readonly part: PartId; readonly arrives: StepId | null }
  | { readonly kind: 'assembly-not-made'; readonly name: string; readonly arrives: StepId | null }
  | { readonly kind: 'removed-before-made'; readonly what: string; readonly arrives: StepId }
  | { readonly kind: 'code-missing'; readonly path: Path }
  | { readonly kind: 'code-not-loaded'; readonly text: string; readonly onto: Ref; readonly arrives: StepId }
  /** `since` is the step that switched on. */
  | { readonly kind: 'powered-while-working'; readonly join: Join | PartUse; readonly since: StepId }
  | { readonly kind: 'measured-unpowered'; readonly text: string }
);

/** How much of the build the rehearsal stands on, each from 0 to 1; null where there is nothing to cover. */
export interface Coverage {
  readonly parts: number | null;
  readonly connections: number | null;
  readonly tools: number | null;
}

/** The guide, executed. */
export interface Ledger {
  readonly steps: readonly { readonly step: StepId; readonly before: State; readonly after: State }[];
  readonly coverage: Coverage;
  readonly stops: readonly Stop[];
}
