import type { StepBlock } from '#guide/guide.ts';
import { element, type Html } from '../shared/html.ts';

/** Words that somebody new may not know, folded away. */
export function renderGlosses(words: StepBlock['words']): Html | null {
  if (words.length === 0) return null;
  return element(
    'details',
    { class: 'more' },
    element(
      'summary',
      {},
      words.length === 1 ? `A new word: ${words[0]?.term}` : `New words: ${words.map(({ term }) => term).join(', ')}`,
    ),
    element(
      'dl',
      {},
      ...words.map(({ term, meaning }) => element('div', {}, element('dt', {}, term), element('dd', {}, meaning))),
    ),
  );
}
