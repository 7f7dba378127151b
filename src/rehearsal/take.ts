import type { Claim } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import type { PartUse } from '#core/step.ts';
import { parseItem } from '#notation/items.ts';
import { tokensOf } from '#notation/names.ts';
import { assemblyName } from './assemblyName.ts';
import { type Bench, wholeOf } from './bench.ts';
import { isCounted } from './isCounted.ts';
import { sameTool } from './sameTool.ts';
import type { ScriptStep } from './script.ts';

/** Lays the tools of a step ready. A list of tools that does not hold one leaves the builder looking for it. */
export function takeTools(bench: Bench, step: ScriptStep): void {
  const { tools, parts } = bench.build;
  for (const claim of step.facts.tools) {
    const isListed =
      tools.some(({ name }) => sameTool(name, claim.value)) ||
      parts.some(({ description }) => sameTool(description, claim.value));
    if (tools.length > 0 && !isListed) {
      bench.stops.push({ kind: 'tool-not-listed', step: step.id, claim, tool: claim.value });
    }
    if (!bench.tools.some((name) => sameTool(name, claim.value))) bench.tools.push(claim.value);
  }
}

/** Takes the step's parts out of the bag, and sub-assemblies off the table. */
export function takeParts(bench: Bench, step: ScriptStep): void {
  for (const claim of step.facts.uses) {
    const use = claim.value;
    const part = bench.partOfUse(use);
    if (part === null) {
      takeUnlisted(bench, step, claim);
      continue;
    }
    if (step.optional) bench.optionalParts.add(part.id);
    const taking = bench.bag.take(use, part, isCounted(claim));
    if (taking.short) {
      const { had, wanted } = taking;
      bench.stops.push({ kind: 'part-used-up', step: step.id, claim, use, part: part.id, had, wanted });
    }
    const place = use.ref ?? wholeOf(part.id);
    bench.placed.add(place);
    bench.lifted.delete(place);
  }
}

/** What the list does not hold by that name is a sub-assembly of some step, or listed in other words, or forgotten. */
function takeUnlisted(bench: Bench, step: ScriptStep, claim: Claim<PartUse>): void {
  const use = claim.value;
  if (bench.assemblies.find(use.named) !== null) {
    takeAssembly(bench, step, claim);
    return;
  }
  const name = assemblyName(use.named);
  const makes = ({ facts }: ScriptStep) => facts.makes.some(({ value }) => assemblyName(value) === name);
  const index = bench.script.indexOf(step);
  const arrives = bench.script.find((other, at) => at > index && makes(other))?.id ?? null;
  if (arrives !== null) {
    bench.stops.push({ kind: 'assembly-not-made', step: step.id, claim, name: use.named, arrives });
  }
  if (bench.whole.some(makes)) return;
  const meant = use.ref === null ? partsMeant(bench.build.parts, use.named) : [];
  if (meant.length === 0) bench.stops.push({ kind: 'part-not-listed', step: step.id, claim, use });
  for (const part of meant) {
    bench.bag.take({ ...use, amount: { ...use.amount, approximate: true } }, part, false);
    bench.placed.add(wholeOf(part.id));
  }
}

/** A sub-assembly named again is the same one; only numbers use it up. */
function takeAssembly(bench: Bench, step: ScriptStep, claim: Claim<PartUse>): void {
  const assembly = bench.assemblies.find(claim.value.named);
  if (assembly === null) return;
  assembly.wasUsed = true;
  assembly.isBuiltIn = true;
  if (!isCounted(claim)) return;
  const [had, wanted] = [Math.max(0, assembly.made - assembly.taken), claim.value.amount.n];
  assembly.taken += wanted;
  if (wanted <= had) return;
  const { named: name, maker, counted } = assembly;
  bench.stops.push({ kind: 'assembly-used-up', step: step.id, claim, name, had, wanted, maker, counted });
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
