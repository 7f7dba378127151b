import type { Build } from '#core/build.ts';
import type { Facts } from '#core/facts.ts';
import type { Coverage, Ledger, LedgerStep, Stop } from '#core/ledger.ts';
import { type Bench, setUpBench } from './bench.ts';
import { findChoicesNeeded } from './choices.ts';
import { measureCoverage } from './coverage.ts';
import { finishSteps } from './finish.ts';
import { findLateCheck } from './firstCheck.ts';
import { joinParts } from './join.ts';
import { loadCode } from './loadCode.ts';
import { stopsAtEnd, stopsOnTheWay } from './mergeRuns.ts';
import { hearSwitchingOff, turn, workAsTold } from './power.ts';
import { probe } from './probe.ts';
import { findReadStops } from './readStops.ts';
import { missThings, removeThings } from './remove.ts';
import { type ScriptStep, scriptOf } from './script.ts';
import { turnSide } from './sides.ts';
import { placesOfSteps } from './stepOrder.ts';
import { takeParts, takeTools } from './take.ts';
import { findUnloadedCode } from './unused.ts';
import { findLonelyVariants, scriptFor, variantKeysOf, variantNames } from './variants.ts';

/**
 * Runs the guide with a simulated first-time builder, who does what the steps declare and nothing else, once for
 * each variant. What was only read from prose never halts this builder. Power is off until a step says otherwise.
 */
export function rehearse(build: Build, facts: Facts): Ledger {
  const whole = scriptOf(build, facts);
  const coverage = measureCoverage(build, whole);
  const keys = variantKeysOf(whole);
  const builders = keys.length === 0 ? [null] : keys.length === 1 ? [...keys, null] : keys;
  const runs = builders.map((variant) => {
    const bench = setUpBench(build, facts, whole, scriptFor(whole, variant));
    return walk(bench, coverage);
  });
  return {
    steps: whole.flatMap(({ id }) =>
      runs.flatMap(({ steps }) => steps.find(({ step }) => step === id) ?? []).slice(0, 1),
    ),
    variants: variantNames(whole),
    coverage,
    stops: [
      ...stopsOnTheWay(runs.map(({ onTheWay }) => onTheWay)),
      ...findChoicesNeeded(whole),
      ...findLonelyVariants(whole),
      ...findReadStops(build, facts, whole),
      ...stopsAtEnd(runs.map(({ atEnd }) => atEnd)),
      ...findUnloadedCode({ build, facts }),
    ],
  };
}

/** The way of one builder. */
export interface Run {
  readonly steps: readonly LedgerStep[];
  readonly onTheWay: readonly Stop[];
  readonly atEnd: readonly Stop[];
}

function walk(bench: Bench, coverage: Coverage): Run {
  const order = placesOfSteps(bench.build);
  let seen = bench.look();
  const steps = bench.script.map((step): LedgerStep => {
    const at = order.ofStep(step.id);
    const before = seen(at);
    follow(bench, step);
    seen = bench.look();
    return { step: step.id, before, after: seen(at + 1) };
  });
  const onTheWay = [...bench.stops, ...findLateCheck(bench.script)];
  return { steps, onTheWay, atEnd: finishSteps(bench, coverage) };
}

/** Warnings are heard before anything is touched; the switch at the end of a step is thrown last. */
function follow(bench: Bench, step: ScriptStep): void {
  const { facts } = step;
  bench.warned.push(...facts.hazards.map(({ value }) => value));
  if (facts.power !== null) turn(bench, facts.power.value.during, step);
  hearSwitchingOff(bench, step);
  turnSide(bench, step);
  takeTools(bench, step);
  takeParts(bench, step);
  loadCode(bench, step);
  const notThereYet = removeThings(bench, step, facts.removes);
  joinParts(bench, step);
  for (const claim of facts.makes) bench.assemblies.make(claim, step);
  missThings(bench, step, removeThings(bench, step, notThereYet));
  workAsTold(bench, step);
  probe(bench, step);
  if (facts.power !== null) turn(bench, facts.power.value.after, step);
  if (facts.minutes === null) bench.clock.untold += 1;
  else {
    bench.clock.hands += facts.minutes.value.hands;
    bench.clock.wait += facts.minutes.value.wait;
  }
}
