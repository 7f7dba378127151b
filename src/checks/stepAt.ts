import type { Place } from '#core/place.ts';
import type { Instructions, StepId } from '#core/step.ts';

/** The step in whose text a place lies; null for places elsewhere. */
export function stepAt(instructions: Instructions, place: Place): StepId | null {
  if (place.kind !== 'text') return null;
  const last = instructions.sections.findLast(
    (section) => section.file === place.file && section.place.span[0] <= place.span[0],
  );
  return last?.role === 'step' ? last.id : null;
}
