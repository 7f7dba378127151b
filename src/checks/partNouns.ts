import type { Part } from '#core/part.ts';
import { rememberFor } from '#core/remember.ts';
import { tokensOf } from '#notation/names.ts';
import { wordsOf } from '#prose/proposals/words.ts';
import { sameThing } from './sameThings.ts';

/** Every word of a text in each form by which names are compared. */
export function wordForms(text: string): string[] {
  return [...wordsOf(text).flatMap(({ form, also }) => [form, ...also]), ...tokensOf(text)];
}

/** Last nouns that say little; the one before them names the part as well. */
const says = new Set([
  'module',
  'board',
  'breakout',
  'kit',
  'unit',
  'set',
  'assembly',
  'pack',
  'piece',
  'part',
  'strip',
]);

/**
 * What a row may be called by: `own` are the last noun of each stretch of its name and its type numbers, `alike` what
 * such a thing may be called instead.
 */
export const partNouns = rememberFor(({ description }: Part): Readonly<Record<'own' | 'alike', readonly string[]>> => {
  const stretches = description.split(/[,;:()/|]|\s[–—-]\s|\s(?:for|with|of|to|from|in|on|by|per)\s/u);
  const all = stretches.map((stretch) => {
    const words = wordsOf(stretch);
    const nouns = words.filter(({ form, isName }) => !isName && /^\p{L}{3,}$/u.test(form));
    const last = nouns.findLastIndex(({ form }) => !says.has(form));
    const naming = last < 0 ? nouns.slice(-1) : nouns.slice(last);
    const types = words.filter(({ form, isName }) => isName && (/\d/u.test(form) || naming.length === 0));
    return {
      own: [
        ...naming.flatMap(({ form, from, to }) => [form, ...tokensOf(stretch.slice(from, to)).slice(-1)]),
        ...types.map(({ form }) => form),
      ],
      alike: naming.flatMap(({ form, also }) => [...also, ...(sameThing(form)?.others ?? []).flatMap(wordForms)]),
    };
  });
  return { own: all.flatMap(({ own }) => own), alike: all.flatMap(({ alike }) => alike) };
});
