import { remember } from '#core/remember.ts';
import { parseDate } from '#notation/dates.ts';

/** A date that words open with, and how many characters it takes. `at` is null for a day that no calendar has. */
export interface OpeningDate {
  readonly at: string | null;
  readonly length: number;
}

/** 'Saturday, 12 September 2026, 19:30' has the most words that a date is written in. */
const mostWords = 6;

/** The longest date at the head of a line; null where there is none. */
export const openingDate = remember((words): OpeningDate | null => {
  let found: OpeningDate | null = null;
  let at = 0;
  for (let count = 0; count < mostWords; count++) {
    const word = /^\s*\S+/.exec(words.slice(at))?.[0];
    if (word === undefined) break;
    at += word.length;
    const written = words.slice(0, at).replace(/[\s,:;)*_\]–—-]+$/, '');
    const date = parseDate(written.replace(/\.$/, ''));
    if (date !== null) found = { at: date, length: written.length };
  }
  return found ?? looksLikeDate(words);
});

function looksLikeDate(words: string): OpeningDate | null {
  const match = /^\d{4}[-/.]\d{1,2}[-/.]\d{1,2}(?!\d)|^\d{1,2}[/-]\d{1,2}[/-]\d{4}(?!\d)/.exec(words);
  return match === null ? null : { at: null, length: match[0].length };
}
