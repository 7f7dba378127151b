import type { Audience, Verdict } from '#core/finding.ts';
import { UsageMistake } from '../arguments.ts';

/** Whose findings decide, from the words of `--for`. */
export function audienceOf(word: string | undefined): Audience {
  if (word === undefined || word === 'builder' || word === 'publisher') return word ?? 'builder';
  throw new UsageMistake(`Expected builder or publisher after --for; found “${word}”.`);
}

/** 1 where something halts, else 0. */
export function statusOf(verdict: Verdict): 0 | 1 {
  return verdict === 'halts' ? 1 : 0;
}
