import type { Build } from '#core/build.ts';
import type { Facts } from '#core/facts.ts';
import type { TextPlace } from '#core/place.ts';
import type { SignalWord, StepId } from '#core/step.ts';

/** A caution with a signal word. */
export interface StatedCaution {
  readonly word: SignalWord;
  readonly message: string;
  readonly step: StepId | null;
  readonly place: TextPlace;
}

/** Every caution with a signal word that steps declare or that speaks of a listed hazard, in reading order. */
export function cautionsOf({ instructions }: Build, { steps, hazards }: Facts): StatedCaution[] {
  const declared = Object.entries(steps).flatMap(([step, facts]) =>
    facts.hazards.flatMap(({ value, places }) => {
      const place = places[0];
      return place?.kind === 'text' ? [{ ...value, step, place }] : [];
    }),
  );
  const heard = hazards.flatMap(({ cautions }) =>
    cautions.flatMap(({ word, message, step, place }) => (word === null ? [] : [{ word, message, step, place }])),
  );
  const byPlace = new Map([...heard, ...declared].map((one) => [`${one.place.file} ${one.place.span[0]}`, one]));
  const files = [...new Set(instructions.sections.map(({ file }) => file))];
  return [...byPlace.values()].sort(
    (a, b) => files.indexOf(a.place.file) - files.indexOf(b.place.file) || a.place.span[0] - b.place.span[0],
  );
}
