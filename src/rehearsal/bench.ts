import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Facts } from '#core/facts.ts';
import type { State, Stop } from '#core/ledger.ts';
import type { Part, PartId, Ref } from '#core/part.ts';
import type { Path } from '#core/place.ts';
import type { Hazard, Join, PartUse, StepId } from '#core/step.ts';
import { type Bag, fillBag } from './bag.ts';
import { type Nets, netsOf } from './nets.ts';
import type { ScriptStep } from './script.ts';

/** A connection that is there now, and the step that made it. */
export interface MadeJoin {
  readonly join: Join;
  readonly step: ScriptStep;
}

/** The simulated builder's bench while the guide runs: the only thing of the rehearsal that changes. */
export interface Bench {
  readonly build: Build;
  readonly facts: Facts;
  readonly script: readonly ScriptStep[];
  readonly wiring: Nets;
  readonly bag: Bag;
  readonly tools: string[];
  /** References that have been taken up; `wholeOf` a part where a step took it without naming references. */
  readonly placed: Set<string>;
  readonly made: MadeJoin[];
  /** Every join that was ever made, taken away again or not. */
  readonly everMade: Join[];
  /** Sub-assemblies, by name as compared. */
  readonly assemblies: Map<string, string>;
  readonly loaded: { readonly path: Path; readonly onto: Ref | null }[];
  readonly warned: Hazard[];
  /** The step that switched on; null while power is off. */
  poweredSince: StepId | null;
  /** Parts that only an optional step takes up, by id: nobody misses them. */
  readonly optionalParts: Set<PartId>;
  readonly stops: Stop[];
  partOfRef(ref: Ref): Part | null;
  partOfUse(use: PartUse): Part | null;
  stateFor(variant: string | null): State;
}

/** The bench before the first step: everything that the list holds is in the bag, its tools on the table. */
export function setUpBench(build: Build, facts: Facts, script: readonly ScriptStep[]): Bench {
  const byRef = new Map<Ref, Part>();
  const byId = new Map<PartId, Part>();
  for (const part of build.parts) {
    if (!byId.has(part.id)) byId.set(part.id, part);
    for (const ref of part.refs) if (!byRef.has(ref)) byRef.set(ref, part);
  }
  const bench: Bench = {
    build,
    facts,
    script,
    wiring: netsOf(build.connections),
    bag: fillBag(build.parts),
    tools: build.tools.map(({ name }) => name),
    placed: new Set(),
    made: [],
    everMade: [],
    assemblies: new Map(),
    loaded: [],
    warned: [],
    poweredSince: null,
    optionalParts: new Set(),
    stops: [],
    partOfRef: (ref) => byRef.get(ref.toUpperCase()) ?? byId.get(ref) ?? null,
    partOfUse: (use) => (use.part === null ? null : (byId.get(use.part) ?? null)),
    stateFor: (variant) => ({
      bag: bench.bag.contents(variant),
      tools: [...bench.tools],
      made: [...bench.made.map(({ join }) => nameOfJoin(join)), ...bench.assemblies.values()],
      loaded: bench.loaded.map(({ path, onto }) => (onto === null ? path : `${path} on ${onto}`)),
      powered: bench.poweredSince !== null,
      warned: [...bench.warned],
      explained: [],
    }),
  };
  return bench;
}

/** The row of the wiring table that a join makes, or the join's own name. */
export function nameOfJoin(join: Join): string {
  return join.connection ?? join.id;
}

/** Stands for a part as a whole, which is not its first reference. */
export function wholeOf(part: PartId): string {
  return `all of ${part}`;
}

/** Whether the builder has the part at this end in hand or on the board. */
export function isInPlace(bench: Bench, ref: Ref): boolean {
  const part = bench.partOfRef(ref);
  return bench.placed.has(ref) || (part !== null && bench.placed.has(wholeOf(part.id)));
}

/** The first step after this one that takes up a part; null where none does. */
export function stepThatTakes(bench: Bench, ref: Ref, after: number): StepId | null {
  const part = bench.partOfRef(ref);
  const takes = ({ value }: Claim<PartUse>) =>
    value.ref === ref || (value.ref === null && value.part !== null && value.part === part?.id);
  return bench.script.find((step, index) => index > after && step.facts.uses.some(takes))?.id ?? null;
}
