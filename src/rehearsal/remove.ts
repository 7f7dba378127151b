import type { Claim } from '#core/claim.ts';
import { endpointId } from '#core/connection.ts';
import type { Part } from '#core/part.ts';
import { isJoin, type Join, type PartUse, type StepId } from '#core/step.ts';
import { assemblyName } from './assemblyName.ts';
import { type Bench, stepThatTakes, wholeOf } from './bench.ts';
import { isSameJoin } from './join.ts';
import { stopIfPowered } from './power.ts';
import type { ScriptStep } from './script.ts';

/** Takes away what is there, and returns what is not there (yet). */
export function removeThings(
  bench: Bench,
  step: ScriptStep,
  removals: readonly Claim<Join | PartUse>[],
): Claim<Join | PartUse>[] {
  return removals.filter((claim) => {
    const gone = isJoin(claim.value)
      ? removeJoin(bench, step, claim, claim.value)
      : removePart(bench, step, claim, claim.value);
    if (gone && isElectrical(bench, claim.value)) stopIfPowered(bench, step, claim, claim.value);
    return !gone;
  });
}

/** The builder is told to take away what only a later step brings. What no step brings may have come assembled. */
export function missThings(bench: Bench, step: ScriptStep, removals: readonly Claim<Join | PartUse>[]): void {
  const index = bench.script.indexOf(step);
  for (const claim of removals) {
    const { value } = claim;
    const arrives = isJoin(value) ? stepThatJoins(bench, value, index) : stepThatBrings(bench, value, index);
    if (arrives === null) continue;
    const what = isJoin(value) ? `${endpointId(value.from)} – ${endpointId(value.to)}` : value.named;
    bench.stops.push({ kind: 'removed-before-made', step: step.id, claim, what, arrives });
  }
}

function removeJoin(bench: Bench, step: ScriptStep, claim: Claim<unknown>, join: Join): boolean {
  const at = bench.made.findIndex((made) => isSameJoin(made.join, join));
  if (at < 0) return false;
  bench.made.splice(at, 1);
  bench.unmade.push({ what: join, step: step.id, claim });
  return true;
}

function removePart(bench: Bench, step: ScriptStep, claim: Claim<unknown>, use: PartUse): boolean {
  if (removeAssembly(bench, use)) return true;
  const part = bench.partOfUse(use);
  if (part === null) return false;
  const place = use.ref ?? wholeOf(part.id);
  if (!bench.placed.delete(place)) return bench.placed.has(wholeOf(part.id));
  putBack(bench, use, part);
  bench.lifted.set(place, { what: use, step: step.id, claim });
  if (use.ref !== null) loosen(bench, use.ref);
  return true;
}

/** What was built in is lifted out whole; what still lies loose is taken apart, and its parts are there again. */
function removeAssembly(bench: Bench, use: PartUse): boolean {
  const assembly = bench.assemblies.find(use.named);
  if (assembly === null) return false;
  if (assembly.isBuiltIn) {
    assembly.isBuiltIn = false;
    assembly.taken = Math.max(0, assembly.taken - use.amount.n);
    return true;
  }
  bench.assemblies.drop(use.named);
  for (const inside of assembly.parts) {
    const part = bench.partOfUse(inside);
    if (part === null || !bench.placed.delete(inside.ref ?? wholeOf(part.id))) continue;
    putBack(bench, inside, part);
    if (inside.ref !== null) loosen(bench, inside.ref);
  }
  return true;
}

function putBack(bench: Bench, use: PartUse, part: Part): void {
  bench.bag.putBack(use, part);
  bench.returned.add(part.id);
}

/** The wires of a part come off with it. */
function loosen(bench: Bench, ref: string): void {
  const stays = bench.made.filter(({ join }) => join.from.ref !== ref && join.to.ref !== ref);
  bench.made.splice(0, bench.made.length, ...stays);
}

function stepThatJoins(bench: Bench, join: Join, after: number): StepId | null {
  const makes = ({ value }: Claim<Join>) => isSameJoin(value, join);
  return bench.script.find((step, index) => index > after && step.facts.connects.some(makes))?.id ?? null;
}

function stepThatBrings(bench: Bench, use: PartUse, after: number): StepId | null {
  const part = bench.partOfUse(use);
  if (part !== null) return stepThatTakes(bench, use.ref ?? part.id, after);
  const name = assemblyName(use.named);
  const makes = ({ value }: Claim<string>) => assemblyName(value) === name;
  return bench.script.find((step, index) => index > after && step.facts.makes.some(makes))?.id ?? null;
}

/** A lid may come off under power; what is wired may not. */
function isElectrical(bench: Bench, value: Join | PartUse): boolean {
  if (isJoin(value)) return true;
  return bench.build.connections.some(({ from, to }) => from.ref === value.ref || to.ref === value.ref);
}
