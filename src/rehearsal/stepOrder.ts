import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import type { StepId } from '#core/step.ts';

/** Where things stand in the order of reading, by number of the section. */
export interface StepOrder {
  ofStep(step: StepId): number;
  /** The section in which words stand; before the first section counts as the first. */
  sectionAt(place: TextPlace): number;
}

export function placesOfSteps({ instructions: { sections } }: Build): StepOrder {
  const byStep = new Map(sections.map(({ id }, index) => [id, index]));
  return {
    ofStep: (step) => byStep.get(step) ?? 0,
    sectionAt: (place) =>
      Math.max(
        0,
        sections.findLastIndex((section) => section.file === place.file && section.place.span[0] <= place.span[0]),
      ),
  };
}
