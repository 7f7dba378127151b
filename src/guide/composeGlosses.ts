import type { StepId } from '#core/step.ts';
import type { TermMention } from '#core/term.ts';

/** Words of the trade that each step is the first to use, where neither the guide nor a skill it asks for explains them. */
export function glossesOf(
  terms: readonly TermMention[],
): ReadonlyMap<StepId, readonly { term: string; meaning: string }[]> {
  const clear = new Set(terms.filter(({ told }) => told !== 'used').map(({ term }) => term));
  const glosses = new Map<StepId, { term: string; meaning: string }[]>();
  for (const { term, meaning, step, told } of terms) {
    if (step === null || told !== 'used' || clear.has(term)) continue;
    clear.add(term);
    glosses.set(step, [...(glosses.get(step) ?? []), { term, meaning }]);
  }
  return glosses;
}
