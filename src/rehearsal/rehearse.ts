import type { Build } from '#core/build.ts';
import type { Facts } from '#core/facts.ts';
import type { Ledger } from '#core/ledger.ts';
import { joinParts, loadCode, missThings, putTogether, removeThings, takeParts, takeTools } from './actions.ts';
import { type Bench, setUpBench } from './bench.ts';
import { measureCoverage } from './coverage.ts';
import { finishSteps } from './finish.ts';
import { probe } from './probe.ts';
import { type ScriptStep, scriptOf } from './script.ts';

/**
 * Runs the guide with a simulated first-time builder, who does what the steps declare and nothing else. What was
 * only read from prose never stops this builder. Power is off until a step says otherwise.
 */
export function rehearse(build: Build, facts: Facts): Ledger {
  const script = scriptOf(build, facts);
  const bench = setUpBench(build, facts, script);
  const steps = script.map((step, index) => {
    const before = bench.stateFor(step.variant);
    follow(bench, step, index);
    return { step: step.id, before, after: bench.stateFor(step.variant) };
  });
  const coverage = measureCoverage(build, script);
  return { steps, coverage, stops: [...bench.stops, ...finishSteps(bench, coverage)] };
}

/** Warnings are heard before anything is touched; the switch at the end of a step is thrown last. */
function follow(bench: Bench, step: ScriptStep, index: number): void {
  const { facts } = step;
  bench.warned.push(...facts.hazards.map(({ value }) => value));
  if (facts.power !== null) turn(bench, facts.power.value.during, step);
  takeTools(bench, step);
  takeParts(bench, step, index);
  loadCode(bench, step);
  const notThereYet = removeThings(bench, step, facts.removes);
  joinParts(bench, step, index);
  putTogether(bench, step);
  missThings(bench, step, index, removeThings(bench, step, notThereYet));
  probe(bench, step, index);
  if (facts.power !== null) turn(bench, facts.power.value.after, step);
}

function turn(bench: Bench, power: 'on' | 'off', step: ScriptStep): void {
  if (power === 'off') bench.poweredSince = null;
  else bench.poweredSince ??= step.id;
}
