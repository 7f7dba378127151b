import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Facts } from '#core/facts.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import { type VariantKey, variantKey, variantsNamed } from './variantKey.ts';

/** One step as the simulated builder hears it: only what the maker has declared. */
export interface ScriptStep {
  readonly id: StepId;
  readonly facts: StepFacts;
  /** Keys of the variants whose builders follow it; null: everyone does. */
  readonly variants: readonly VariantKey[] | null;
  readonly optional: boolean;
}

/** The steps of the guide in reading order, with their declared facts alone. */
export function scriptOf(build: Build, facts: Facts): ScriptStep[] {
  const told = build.instructions.sections.flatMap(({ id, role }) => {
    const own = facts.steps[id];
    return role !== 'step' || own === undefined ? [] : [{ id, facts: declaredOnly(own) }];
  });
  const keys = new Set(told.map((step) => variantKey(step.facts.variant?.value ?? '')));
  return told.map((step) => ({
    ...step,
    variants: variantsNamed(step.facts.variant?.value ?? '', keys),
    optional: step.facts.optional !== null && !/^(?:no|false)$/i.test(step.facts.optional.value.trim()),
  }));
}

function declaredOnly(facts: StepFacts): StepFacts {
  return {
    uses: facts.uses.filter(isDeclared),
    tools: facts.tools.filter(isDeclared),
    makes: facts.makes.filter(isDeclared),
    connects: facts.connects.filter(isDeclared),
    removes: facts.removes.filter(isDeclared),
    loads: facts.loads.filter(isDeclared),
    power: declaredOrNull(facts.power),
    hazards: facts.hazards.filter(isDeclared),
    measures: facts.measures.filter(isDeclared),
    expects: facts.expects.filter(isDeclared),
    minutes: declaredOrNull(facts.minutes),
    side: declaredOrNull(facts.side),
    optional: declaredOrNull(facts.optional),
    variant: declaredOrNull(facts.variant),
    irreversible: declaredOrNull(facts.irreversible),
  };
}

function isDeclared(claim: Claim<unknown>): boolean {
  return claim.basis === 'declared';
}

function declaredOrNull<T>(claim: Claim<T> | null): Claim<T> | null {
  return claim !== null && isDeclared(claim) ? claim : null;
}
