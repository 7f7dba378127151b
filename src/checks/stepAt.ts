import type { Place } from '#core/place.ts';
import type { Instructions, StepId } from '#core/step.ts';

/** The step in whose text a place lies; null for places elsewhere. */
export function stepAt(instructions: Instructions, place: Place): StepId | null {
  if (place.kind !== 'text') return null;
  const before = instructions.sections.filter(
    (section) => section.file === place.file && section.place.span[0] <= place.span[0],
  );
  const last = before.reduce<(typeof before)[number] | null>(
    (latest, section) => (latest === null || section.place.span[0] >= latest.place.span[0] ? section : latest),
    null,
  );
  return last?.role === 'step' ? last.id : null;
}
