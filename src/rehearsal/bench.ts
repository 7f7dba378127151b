import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Facts } from '#core/facts.ts';
import type { State, Stop } from '#core/ledger.ts';
import type { Part, PartId, Ref } from '#core/part.ts';
import type { Path } from '#core/place.ts';
import type { Hazard, Join, PartUse, StepId } from '#core/step.ts';
import { type Assemblies, noAssemblies } from './assemblies.ts';
import { type Bag, fillBag } from './bag.ts';
import { type Nets, netsOf } from './nets.ts';
import type { ScriptStep } from './script.ts';
import { placesOfSteps } from './stepOrder.ts';

/** A connection that is there now, and the step that made it. */
export interface MadeJoin {
  readonly join: Join;
  readonly step: ScriptStep;
}

/** What was taken off the bench, by the step's words for it. */
export interface Removal<T> {
  readonly what: T;
  readonly step: StepId;
  readonly claim: Claim<unknown>;
}

/** Who switched on, and the words that say so. */
export interface PoweredSince {
  readonly step: StepId;
  readonly claim: Claim<unknown>;
}

/** The simulated builder's bench while the guide runs: the only thing of the rehearsal that changes. */
export interface Bench {
  readonly build: Build;
  readonly facts: Facts;
  /** What this builder follows; `whole` holds the steps of other variants as well. */
  readonly script: readonly ScriptStep[];
  readonly whole: readonly ScriptStep[];
  readonly wiring: Nets;
  readonly bag: Bag;
  readonly tools: string[];
  /** References that have been taken up; `wholeOf` a part where a step took it without naming references. */
  readonly placed: Set<string>;
  /** Parts that were in place and were taken off again, by what `placed` held. */
  readonly lifted: Map<string, Removal<PartUse>>;
  /** Parts that went back into the bag. */
  readonly returned: Set<PartId>;
  readonly made: MadeJoin[];
  /** Every join that was ever made, taken away again or not. */
  readonly everMade: Join[];
  /** Joins that were made and taken away again. */
  readonly unmade: Removal<Join>[];
  readonly assemblies: Assemblies;
  readonly loaded: { readonly path: Path; readonly onto: Ref | null; readonly step: StepId }[];
  readonly warned: Hazard[];
  readonly clock: { hands: number; wait: number; untold: number };
  side: { readonly name: string; readonly step: StepId } | null;
  /** Null while power is off. */
  poweredSince: PoweredSince | null;
  /** As the words of the steps tell it, where no step declares how the power is. */
  readPoweredSince: PoweredSince | null;
  /** Since power was last declared, words told to switch off or to pull the plug. */
  isToldOff: boolean;
  /** Parts that only an optional step takes up, by id: nobody misses them. */
  readonly optionalParts: Set<PartId>;
  readonly stops: Stop[];
  partOfRef(ref: Ref): Part | null;
  partOfUse(use: PartUse): Part | null;
  /** What the builder has now, to be told with the words explained in the first so many sections. */
  look(): (until: number) => State;
}

/** The bench before the first step: everything that the list holds is in the bag, its tools on the table. */
export function setUpBench(
  build: Build,
  facts: Facts,
  whole: readonly ScriptStep[],
  script: readonly ScriptStep[],
): Bench {
  const byRef = new Map<Ref, Part>();
  const byId = new Map<PartId, Part>();
  for (const part of build.parts) {
    if (!byId.has(part.id)) byId.set(part.id, part);
    for (const ref of part.refs) if (!byRef.has(ref)) byRef.set(ref, part);
  }
  const explained = wordsExplained(build, facts);
  const bench: Bench = {
    build,
    facts,
    script,
    whole,
    wiring: netsOf(build.connections),
    bag: fillBag(build.parts),
    tools: build.tools.map(({ name }) => name),
    placed: new Set(),
    lifted: new Map(),
    returned: new Set(),
    made: [],
    everMade: [],
    unmade: [],
    assemblies: noAssemblies(),
    loaded: [],
    warned: [],
    clock: { hands: 0, wait: 0, untold: 0 },
    side: null,
    poweredSince: null,
    readPoweredSince: null,
    isToldOff: false,
    optionalParts: new Set(),
    stops: [],
    partOfRef: (ref) => byRef.get(ref.toUpperCase()) ?? byId.get(ref) ?? null,
    partOfUse: (use) => (use.part === null ? null : (byId.get(use.part) ?? null)),
    look: () => {
      const contents = bench.bag.contents();
      const now = {
        tools: [...bench.tools],
        made: [...bench.made.map(({ join }) => nameOfJoin(join)), ...bench.assemblies.names()],
        loaded: bench.loaded.map(({ path, onto }) => (onto === null ? path : `${path} on ${onto}`)),
        powered: bench.poweredSince !== null,
        side: bench.side?.name ?? null,
        warned: [...bench.warned],
        clock: { ...bench.clock },
      };
      return (until) => ({
        get bag() {
          return contents();
        },
        tools: now.tools,
        made: now.made,
        loaded: now.loaded,
        powered: now.powered,
        side: now.side,
        warned: now.warned,
        explained: explained.filter(({ at }) => at < until).map(({ term }) => term),
        clock: now.clock,
      });
    },
  };
  return bench;
}

/** Words with the number of the section that first explains each; −1 where a builder has them from the start. */
function wordsExplained(build: Build, facts: Facts): { readonly term: string; readonly at: number }[] {
  const order = placesOfSteps(build);
  const first = new Map<string, number>();
  for (const { term, told, place } of facts.terms) {
    if (told === 'used') continue;
    const at = told === 'beforehand' ? -1 : order.sectionAt(place);
    first.set(term, Math.min(at, first.get(term) ?? at));
  }
  return [...first].map(([term, at]) => ({ term, at })).sort((a, b) => a.at - b.at);
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
