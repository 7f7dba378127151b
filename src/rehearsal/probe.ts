import type { Claim } from '#core/claim.ts';
import { type Endpoint, endpointId } from '#core/connection.ts';
import type { Measure, StepId } from '#core/step.ts';
import type { Bench } from './bench.ts';
import type { ScriptStep } from './script.ts';

/** Measures as told: a live reading needs power, and where code drives the pin, that code on its board. */
export function probe(bench: Bench, step: ScriptStep, index: number): void {
  const isPowered = bench.poweredSince !== null || step.facts.power?.value.after === 'on';
  for (const claim of step.facts.measures) {
    if (!isLive(claim.value)) continue;
    if (!isPowered) stopUnpowered(bench, step, claim);
    else stopWithoutCode(bench, step, index, claim);
  }
}

/** A reading that only a powered circuit gives: volts, amperes or hertz, other than none at all or a diode's drop. */
function isLive({ expect, text }: Measure): boolean {
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

function stopWithoutCode(bench: Bench, step: ScriptStep, index: number, claim: Claim<Measure>): void {
  for (const end of claim.value.between.map(endOf)) {
    if (end === null || !isDriven(bench, end) || bench.loaded.some(({ onto }) => runsOn(onto, end))) continue;
    const arrives = stepThatLoads(bench, end, index);
    if (arrives === null) continue;
    const { text } = claim.value;
    bench.stops.push({ kind: 'code-not-loaded', step: step.id, claim, text, onto: end.ref, arrives });
    return;
  }
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

function stepThatLoads(bench: Bench, end: Endpoint, after: number): StepId | null {
  const loads = ({ facts }: ScriptStep) => facts.loads.some(({ value }) => runsOn(value.onto, end));
  return bench.script.find((step, index) => index > after && loads(step))?.id ?? null;
}

/** Code that names no board runs on the only one. */
function runsOn(onto: string | null, end: Endpoint): boolean {
  return onto === null || onto === end.ref;
}
