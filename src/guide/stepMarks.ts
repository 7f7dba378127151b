import type { Claim } from '#core/claim.ts';
import type { Facts } from '#core/facts.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import type { StepMark } from './guide.ts';

/** How each step is named from elsewhere in the guide. */
export type StepMarks = ReadonlyMap<StepId, StepMark>;

/** A guide states only what its maker declared or what follows from it; what was guessed from prose stays prose. */
export function stated<T>(claims: readonly Claim<T>[]): Claim<T>[] {
  return claims.filter((claim) => claim.basis === 'declared' || claim.basis === 'derived');
}

/** Marks of the steps of which `has` is true, in the order of doing. */
export function stepsThat(marks: StepMarks, facts: Facts, has: (step: StepFacts) => boolean): StepMark[] {
  return [...marks].flatMap(([id, mark]) => {
    const step = facts.steps[id];
    return step && has(step) ? [mark] : [];
  });
}

/** A step as a note names it: by heading, slug or number. */
export function markOf(written: string, marks: StepMarks, headings: ReadonlyMap<StepId, string>): StepMark | null {
  const slug = slugOf(written);
  for (const [id, mark] of marks) {
    if (id === slug || slugOf(headings.get(id) ?? '') === slug || written.trim() === `${mark.number}`) return mark;
  }
  return null;
}
