import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Facts } from '#core/facts.ts';
import type { StepFacts, StepId } from '#core/step.ts';

/** One step as the simulated builder hears it: only what the maker has declared. */
export interface ScriptStep {
  readonly id: StepId;
  readonly facts: StepFacts;
  /** Builders of different variants follow different steps; null: everyone follows it. */
  readonly variant: string | null;
  readonly optional: boolean;
}

/** The steps of the guide in reading order, with their declared facts alone. */
export function scriptOf(build: Build, facts: Facts): ScriptStep[] {
  const steps: ScriptStep[] = [];
  for (const section of build.instructions.sections) {
    const told = facts.steps[section.id];
    if (section.role !== 'step' || told === undefined) continue;
    const own = declaredOnly(told);
    steps.push({
      id: section.id,
      facts: own,
      variant: own.variant?.value.trim().toLowerCase() ?? null,
      optional: own.optional !== null && !/^(?:no|false)$/i.test(own.optional.value.trim()),
    });
  }
  return steps;
}

/** Whether one builder may follow both steps. */
export function sameBuilder(a: string | null, b: string | null): boolean {
  return a === null || b === null || a === b;
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
