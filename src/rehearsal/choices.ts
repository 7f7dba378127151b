import type { Claim } from '#core/claim.ts';
import type { Stop } from '#core/ledger.ts';
import { assemblyName } from './assemblyName.ts';
import type { ScriptStep } from './script.ts';
import { variantKeysOf } from './variants.ts';

/** Something that a step needs, and which steps bring it. */
interface Need {
  readonly what: string;
  readonly claim: Claim<unknown>;
  readonly bringers: readonly ScriptStep[];
}

/** What a step needs though only an optional step, or one for other builders, has brought it. */
export function findChoicesNeeded(script: readonly ScriptStep[]): Stop[] {
  const areAlternatives = variantKeysOf(script).length <= 2;
  const orderOf = new Map(script.map((step, index) => [step, index]));
  const makers = stepsBy(script, ({ facts }) => facts.makes.map(({ value }) => assemblyName(value)));
  const takers = stepsBy(script, ({ facts }) => facts.uses.flatMap(({ value }) => value.ref ?? []));
  return script.flatMap((step, index) => {
    if (step.optional) return [];
    return needsOf(step, makers, takers).flatMap(({ what, claim, bringers }): Stop[] => {
      const first = bringers[0];
      if (first === undefined || (orderOf.get(first) ?? 0) >= index) return [];
      const sure = bringers.filter(({ optional }) => !optional);
      const stop = { kind: 'brought-for-some', step: step.id, claim, what } as const;
      if (sure.length === 0) return [{ ...stop, brings: first.id, only: null }];
      const only = sure[0]?.facts.variant?.value ?? null;
      const isForOne = sure.every(({ variants }) => variants?.length === 1 && variants[0] === sure[0]?.variants?.[0]);
      const isTheirs =
        step.variants !== null && sure[0]?.variants?.[0] === step.variants[0] && step.variants.length === 1;
      return areAlternatives && isForOne && !isTheirs && only !== null ? [{ ...stop, brings: first.id, only }] : [];
    });
  });
}

type StepsByName = ReadonlyMap<string, readonly ScriptStep[]>;

/** Steps by each of the names that they bring, in the order of the guide. */
function stepsBy(script: readonly ScriptStep[], namesOf: (step: ScriptStep) => readonly string[]): StepsByName {
  const steps = new Map<string, ScriptStep[]>();
  for (const step of script) {
    for (const name of new Set(namesOf(step))) {
      const known = steps.get(name);
      if (known === undefined) steps.set(name, [step]);
      else known.push(step);
    }
  }
  return steps;
}

/** Sub-assemblies that the step names, and parts that it wires. */
function needsOf({ facts, variants }: ScriptStep, makers: StepsByName, takers: StepsByName): Need[] {
  const assemblies = facts.uses
    .filter(({ value }) => value.part === null)
    .map((claim): Need => {
      const what = claim.value.named;
      return { what, claim, bringers: makers.get(assemblyName(what)) ?? [] };
    });
  // Parts may lie ready; that the builders of another variant take them up elsewhere tells nothing.
  if (variants !== null) return assemblies;
  const seen = new Set<string>();
  const ends = facts.connects.flatMap((claim): Need[] =>
    [claim.value.from.ref, claim.value.to.ref].flatMap((ref) => {
      if (seen.has(ref)) return [];
      seen.add(ref);
      return [{ what: ref, claim, bringers: takers.get(ref) ?? [] }];
    }),
  );
  return [...assemblies, ...ends];
}
