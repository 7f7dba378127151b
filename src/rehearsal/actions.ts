import type { Claim } from '#core/claim.ts';
import { endpointId } from '#core/connection.ts';
import type { Part } from '#core/part.ts';
import { isJoin, type Join, type PartUse } from '#core/step.ts';
import { parseItem } from '#notation/items.ts';
import { tokensOf } from '#notation/names.ts';
import { assemblyName } from './assemblyName.ts';
import { type Bench, isInPlace, stepThatTakes, wholeOf } from './bench.ts';
import { compareJoin } from './compareJoin.ts';
import { sameTool } from './sameTool.ts';
import { type ScriptStep, sameBuilder } from './script.ts';

/** Lays the tools of a step ready. A list of tools that does not hold one leaves the builder looking for it. */
export function takeTools(bench: Bench, step: ScriptStep): void {
  const { tools, parts } = bench.build;
  for (const claim of step.facts.tools) {
    const listed = [...tools.map(({ name }) => name), ...parts.map(({ description }) => description)];
    if (tools.length > 0 && !listed.some((name) => sameTool(name, claim.value))) {
      bench.stops.push({ kind: 'tool-not-listed', step: step.id, claim, tool: claim.value });
    }
    if (!bench.tools.some((name) => sameTool(name, claim.value))) bench.tools.push(claim.value);
  }
}

/** Takes the step's parts out of the bag. */
export function takeParts(bench: Bench, step: ScriptStep, index: number): void {
  for (const claim of step.facts.uses) {
    const use = claim.value;
    const part = bench.partOfUse(use);
    if (part === null) {
      takeUnlisted(bench, step, index, claim);
      continue;
    }
    if (step.optional) bench.optionalParts.add(part.id);
    const taking = bench.bag.take(use, part, isCounted(claim), step.variant);
    if (taking.short) {
      const { had, wanted } = taking;
      bench.stops.push({ kind: 'part-used-up', step: step.id, claim, use, part: part.id, had, wanted });
    }
    bench.placed.add(use.ref ?? wholeOf(part.id));
  }
}

/** What the list does not hold by that name is a sub-assembly of some step, or listed in other words, or forgotten. */
function takeUnlisted(bench: Bench, step: ScriptStep, index: number, claim: Claim<PartUse>): void {
  const use = claim.value;
  const name = assemblyName(use.named);
  const maker = bench.script.findIndex(({ facts }) => facts.makes.some(({ value }) => assemblyName(value) === name));
  if (maker > index) {
    const arrives = bench.script[maker]?.id ?? null;
    bench.stops.push({ kind: 'assembly-not-made', step: step.id, claim, name: use.named, arrives });
  }
  if (maker >= 0) return;
  const meant = use.ref === null ? partsMeant(bench.build.parts, use.named) : [];
  if (meant.length === 0) bench.stops.push({ kind: 'part-not-listed', step: step.id, claim, use });
  for (const part of meant) {
    bench.bag.take({ ...use, amount: { ...use.amount, approximate: true } }, part, false, step.variant);
    bench.placed.add(wholeOf(part.id));
  }
}

/** Listed parts that a name may mean: all words of the one stand in the other ('wire 30 cm', 'Wire'). */
function partsMeant(parts: readonly Part[], named: string): Part[] {
  const words = new Set(tokensOf(parseItem(named).name));
  return parts.filter(({ description }) => {
    const said = new Set(tokensOf(description));
    const [few, many] = said.size < words.size ? [said, words] : [words, said];
    return few.size > 0 && [...few].every((word) => many.has(word));
  });
}

/** Whether the step says how many, as 'M3 screw × 4' does: then they are taken, not merely named again. */
function isCounted({ value, places }: Claim<PartUse>): boolean {
  const words = [value.named, ...places.map((place) => (place.kind === 'text' ? place.quote : ''))];
  return value.amount.n !== 1 || words.some((text) => /(?:^|\s)1\s*[×x]|[×x]\s*1(?:\s|$)/i.test(text));
}

/** Puts the step's code onto its boards. */
export function loadCode(bench: Bench, step: ScriptStep): void {
  for (const claim of step.facts.loads) {
    const { path, onto, exists } = claim.value;
    if (!exists) bench.stops.push({ kind: 'code-missing', step: step.id, claim, path });
    bench.loaded.push({ path, onto });
  }
}

/** Makes the step's connections, each between parts that are in place, on a circuit without power. */
export function joinParts(bench: Bench, step: ScriptStep, index: number): void {
  for (const claim of step.facts.connects) {
    const join = claim.value;
    checkAgainstWiring(bench, step, claim);
    for (const ref of new Set([join.from.ref, join.to.ref])) {
      const arrives = isInPlace(bench, ref) ? null : stepThatTakes(bench, ref, index);
      const part = bench.partOfRef(ref)?.id ?? ref;
      if (arrives !== null) bench.stops.push({ kind: 'part-not-in-place', step: step.id, claim, join, part, arrives });
    }
    const earlier = bench.made.find(
      (made) => isSameJoin(made.join, join) && sameBuilder(made.step.variant, step.variant),
    );
    if (earlier !== undefined) {
      bench.stops.push({ kind: 'connection-made-twice', step: step.id, claim, join, before: earlier.step.id });
    }
    stopIfPowered(bench, step, claim, join);
    bench.made.push({ join, step });
    bench.everMade.push(join);
  }
}

function checkAgainstWiring(bench: Bench, step: ScriptStep, claim: Claim<Join>): void {
  const { connections } = bench.build;
  if (connections.length === 0 || claim.value.connection !== null) return;
  const verdict = compareJoin(claim.value, connections, bench.wiring);
  if (verdict.is !== 'otherwise' && verdict.is !== 'absent') return;
  const nearest = verdict.is === 'otherwise' ? verdict.row.id : null;
  bench.stops.push({ kind: 'connection-not-in-wiring', step: step.id, claim, join: claim.value, nearest });
}

/** A plug is made to be pushed in under power; a soldering iron and a bare wire are not. */
function stopIfPowered(bench: Bench, step: ScriptStep, claim: Claim<unknown>, join: Join | PartUse): void {
  const isPlug = isJoin(join) && [join.from.pin, join.to.pin].some((pin) => /USB|PLUG|JACK/i.test(pin));
  if (bench.poweredSince === null || isPlug) return;
  bench.stops.push({ kind: 'powered-while-working', step: step.id, claim, join, since: bench.poweredSince });
}

/** Names what the step puts together. */
export function putTogether(bench: Bench, step: ScriptStep): void {
  for (const { value } of step.facts.makes) bench.assemblies.set(assemblyName(value), value);
}

/** Takes away what is there, and returns what is not there (yet). */
export function removeThings(
  bench: Bench,
  step: ScriptStep,
  removals: readonly Claim<Join | PartUse>[],
): Claim<Join | PartUse>[] {
  return removals.filter((claim) => {
    const gone = isJoin(claim.value) ? removeJoin(bench, claim.value) : removePart(bench, claim.value, step.variant);
    if (gone && isElectrical(bench, claim.value)) stopIfPowered(bench, step, claim, claim.value);
    return !gone;
  });
}

/** The builder is told to take away what only a later step brings. What no step brings may have come assembled. */
export function missThings(
  bench: Bench,
  step: ScriptStep,
  index: number,
  removals: readonly Claim<Join | PartUse>[],
): void {
  for (const claim of removals) {
    const { value } = claim;
    const arrives = isJoin(value) ? stepThatJoins(bench, value, index) : stepThatBrings(bench, value, index);
    if (arrives === null) continue;
    const what = isJoin(value) ? `${endpointId(value.from)} – ${endpointId(value.to)}` : value.named;
    bench.stops.push({ kind: 'removed-before-made', step: step.id, claim, what, arrives });
  }
}

function removeJoin(bench: Bench, join: Join): boolean {
  const at = bench.made.findIndex((made) => isSameJoin(made.join, join));
  if (at >= 0) bench.made.splice(at, 1);
  return at >= 0;
}

function removePart(bench: Bench, use: PartUse, variant: string | null): boolean {
  if (bench.assemblies.delete(assemblyName(use.named))) return true;
  const part = bench.partOfUse(use);
  if (part === null) return false;
  const wasPlaced = bench.placed.delete(use.ref ?? wholeOf(part.id));
  if (!wasPlaced) return bench.placed.has(wholeOf(part.id));
  bench.bag.putBack(use, part, variant);
  const isGone = ({ join }: { join: Join }) => use.ref !== null && [join.from.ref, join.to.ref].includes(use.ref);
  bench.made.splice(0, bench.made.length, ...bench.made.filter((made) => !isGone(made)));
  return true;
}

function stepThatJoins(bench: Bench, join: Join, after: number) {
  const makes = ({ value }: Claim<Join>) => isSameJoin(value, join);
  return bench.script.find((step, index) => index > after && step.facts.connects.some(makes))?.id ?? null;
}

function stepThatBrings(bench: Bench, use: PartUse, after: number) {
  const part = bench.partOfUse(use);
  if (part !== null) return stepThatTakes(bench, use.ref ?? part.id, after);
  const name = assemblyName(use.named);
  const makes = ({ value }: Claim<string>) => assemblyName(value) === name;
  return bench.script.find((step, index) => index > after && step.facts.makes.some(makes))?.id ?? null;
}

function isSameJoin(a: Join, b: Join): boolean {
  return a.id === b.id || (a.connection !== null && a.connection === b.connection);
}

/** A lid may come off under power; what is wired may not. */
function isElectrical(bench: Bench, value: Join | PartUse): boolean {
  if (isJoin(value)) return true;
  return bench.build.connections.some(({ from, to }) => from.ref === value.ref || to.ref === value.ref);
}
