import type { Claim } from '#core/claim.ts';
import type { Stop } from '#core/ledger.ts';
import { assemblyName } from './assemblyName.ts';
import type { ScriptStep } from './script.ts';
import { variantKeysOf } from './variants.ts';

/** Something that a step needs, and which steps bring it. */
interface Need {
  readonly what: string;
  readonly claim: Claim<unknown>;
  readonly isBroughtBy: (step: ScriptStep) => boolean;
}

/** What a step needs though only an optional step, or one for other builders, has brought it. */
export function findChoicesNeeded(script: readonly ScriptStep[]): Stop[] {
  const areAlternatives = variantKeysOf(script).length <= 2;
  return script.flatMap((step, index) => {
    if (step.optional) return [];
    return needsOf(step).flatMap((need): Stop[] => {
      const bringers = script.filter((other) => need.isBroughtBy(other));
      const first = bringers[0];
      if (first === undefined || script.indexOf(first) >= index) return [];
      const sure = bringers.filter(({ optional }) => !optional);
      const { what, claim } = need;
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

/** Sub-assemblies that the step names, and parts that it wires. */
function needsOf({ facts, variants }: ScriptStep): Need[] {
  const assemblies = facts.uses
    .filter(({ value }) => value.part === null)
    .map((claim): Need => {
      const name = assemblyName(claim.value.named);
      const makes = ({ facts: other }: ScriptStep) => other.makes.some(({ value }) => assemblyName(value) === name);
      return { what: claim.value.named, claim, isBroughtBy: makes };
    });
  // Parts may lie ready; that the builders of another variant take them up elsewhere tells nothing.
  if (variants !== null) return assemblies;
  const seen = new Set<string>();
  const ends = facts.connects.flatMap((claim): Need[] =>
    [claim.value.from.ref, claim.value.to.ref].flatMap((ref) => {
      if (seen.has(ref)) return [];
      seen.add(ref);
      return [
        { what: ref, claim, isBroughtBy: ({ facts: other }) => other.uses.some(({ value }) => value.ref === ref) },
      ];
    }),
  );
  return [...assemblies, ...ends];
}
