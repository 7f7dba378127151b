import type { Build } from '#core/build.ts';
import type { FoundHazard } from '#core/hazard.ts';
import { cautionFor } from '#prose/cautions/library.ts';

/**
 * Hazards that a finding may be made of: those met in a step, and things that are a hazard by being in the list. The
 * library reads English; of a guide in another language it cannot tell what is warned of.
 */
export function hazardsThatBite({ settings }: Build, hazards: readonly FoundHazard[]): FoundHazard[] {
  if (!/^en\b/i.test(settings.language)) return [];
  return hazards.filter(({ hazard, step }) => step !== null || cautionFor(hazard).inItself);
}
