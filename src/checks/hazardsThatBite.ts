import type { Build } from '#core/build.ts';
import type { FoundHazard } from '#core/hazard.ts';
import { cautionFor } from '#prose/cautions/library.ts';

/**
 * Hazards that a finding may be made of: those met in a step, and things that are a hazard by being in the list. In
 * a guide that has only begun, only the grave ones: its omissions are not what it lacks.
 */
export function hazardsThatBite(build: Build, hazards: readonly FoundHazard[]): FoundHazard[] {
  const hasBegunOnly = isOnlyBegun(build) && hazards.every(({ cautions }) => cautions.length === 0);
  return hazards.filter(({ hazard, step }) => {
    const { grave, inItself } = cautionFor(hazard);
    return (step !== null || inItself) && (grave || !hasBegunOnly);
  });
}

/** A guide of no more than one step. */
export function isOnlyBegun({ instructions }: Build): boolean {
  return instructions.sections.filter(({ role }) => role === 'step').length < 2;
}
