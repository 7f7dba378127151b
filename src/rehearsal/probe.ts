import type { Claim } from '#core/claim.ts';
import { type Endpoint, endpointId } from '#core/connection.ts';
import type { Measure, StepId } from '#core/step.ts';
import type { Bench } from './bench.ts';
import type { ScriptStep } from './script.ts';

/** Measures as told: a live reading needs power, and where code drives the pin, that code on its board. */
export function probe(bench: Bench, step: ScriptStep): void {
  const isPowered = bench.poweredSince !== null || step.facts.power?.value.after === 'on';
  for (const claim of step.facts.measures) {
    if (isOhms(claim.value)) stopUnderPower(bench, step, claim);
    if (!isLive(claim.value)) continue;
    if (!isPowered) stopUnpowered(bench, step, claim);
    else stopWithoutCode(bench, step, claim);
  }
  for (const claim of step.facts.expects) if (speaksOfCode(claim.value)) stopBeforeCode(bench, step, claim);
}

/** A reading of resistance or continuity between two pins of the circuit. */
export function isOhms({ between, expect }: Measure): boolean {
  const isInCircuit = between.length === 2 && between.every((end) => /^[A-Za-z]+\d+\./.test(end));
  return isInCircuit && /\d\s*[kMm]?(?:Ω|Ω|ohms?(?!\p{L}))|continuity|beep/iu.test(expect);
}

/** A reading that only a powered circuit gives: volts, amperes or hertz, other than none at all or a diode's drop. */
export function isLive({ expect, text }: Measure): boolean {
  if (/diode/i.test(text)) return false;
  const reading = /(\d+(?:[.,]\d+)?)\s*[mµu]?(?:V|A|k?Hz)(?![\p{L}\d])/u.exec(expect);
  return reading !== null && Number(reading[1]?.replace(',', '.')) > 0 && !/^\s*[<≤]/.test(expect);
}

/** A guide that never speaks of power leaves it to the builder; a cell gives its voltage unasked. */
function stopUnpowered(bench: Bench, step: ScriptStep, claim: Claim<Measure>): void {
  const speaksOfPower = bench.script.some(({ facts }) => facts.power !== null);
  const onCell = claim.value.between.some((end) =>
    /^(?:BT|BAT)\d*(?:\.|$)|\b(?:battery|cell|akku|batterie)\b/i.test(end),
  );
  if (!speaksOfPower || onCell) return;
  bench.stops.push({ kind: 'measured-unpowered', step: step.id, claim, text: claim.value.text });
}

/** A step that switches, or is told to, may take its reading while the power is off. */
function stopUnderPower(bench: Bench, step: ScriptStep, claim: Claim<Measure>): void {
  const power = step.facts.power?.value ?? null;
  const mayBeOff = power !== null && (power.during === 'off' || power.after === 'off');
  if (bench.poweredSince === null || bench.isToldOff || mayBeOff) return;
  const { text } = claim.value;
  bench.stops.push({ kind: 'resistance-under-power', step: step.id, claim, text, since: bench.poweredSince.step });
}

function stopWithoutCode(bench: Bench, step: ScriptStep, claim: Claim<Measure>): void {
  for (const end of claim.value.between.map(endOf)) {
    if (end === null || !isDriven(bench, end) || bench.loaded.some(({ onto }) => runsOn(onto, end))) continue;
    const arrives = stepThatLoads(bench, step, ({ value }) => runsOn(value.onto, end));
    if (arrives === null) continue;
    const { text } = claim.value;
    bench.stops.push({ kind: 'code-not-loaded', step: step.id, claim, text, onto: end.ref, arrives });
    return;
  }
}

/** What a program writes to a terminal, nothing but that program does. */
function speaksOfCode(expected: string): boolean {
  return /\bserial (?:monitor|console|output|terminal|plotter)\b|\bREPL\b/i.test(expected);
}

/** The words of a step may load code that no fact declares. */
function stopBeforeCode(bench: Bench, step: ScriptStep, claim: Claim<string>): void {
  const heard = new Set(bench.script.slice(0, bench.script.indexOf(step) + 1).map(({ id }) => id));
  const isTold = bench.facts.actions.some(({ kind, step: at }) => kind === 'load-code' && at !== null && heard.has(at));
  if (bench.loaded.length > 0 || isTold) return;
  const arrives = stepThatLoads(bench, step, () => true);
  if (arrives === null) return;
  const read = { ...claim, basis: 'read' as const };
  bench.stops.push({ kind: 'code-not-loaded', step: step.id, claim: read, text: claim.value, onto: null, arrives });
}

function endOf(written: string): Endpoint | null {
  const dot = written.indexOf('.');
  return dot < 1 ? null : { ref: written.slice(0, dot).toUpperCase(), pin: written.slice(dot + 1) };
}

function isDriven({ facts }: Bench, end: Endpoint): boolean {
  return facts.drivenPins.some(
    (driven) => endpointId(driven) === endpointId(end) && driven.uses.some((use) => use === 'output' || use === 'pwm'),
  );
}

type Loading = ScriptStep['facts']['loads'][number];

function stepThatLoads(bench: Bench, step: ScriptStep, isMeant: (load: Loading) => boolean): StepId | null {
  const after = bench.script.indexOf(step);
  return bench.script.find(({ facts }, index) => index > after && facts.loads.some(isMeant))?.id ?? null;
}

/** Code that names no board runs on the only one. */
function runsOn(onto: string | null, end: Endpoint): boolean {
  return onto === null || onto === end.ref;
}
