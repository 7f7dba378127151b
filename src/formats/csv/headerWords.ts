import { parseMoney } from '#notation/money.ts';
import { foldLatin } from '#notation/slug.ts';

/** A column's header, taken apart. */
export interface HeaderWords {
  /** Words in lower case, joined by spaces, without what stands in brackets, numbers and currencies. */
  readonly words: string;
  /** What stands in brackets, in lower case. */
  readonly inBrackets: string;
  /** ISO 4217 code that the header names, such as that of `unit_price_usd`. */
  readonly currency: string | null;
}

/** Words that say nothing about what a column means. */
const empty = new Set(['approx', 'approximate', 'estimated', 'est', 'target', 'typical', 'typ', 'the', 'our', 'my']);

/** Takes a header apart: `ManufacturerPartNum`, `mfg_pn`, `Mfr. #` and `Unit Price (USD)` all become plain words. */
export function headerWords(header: string): HeaderWords {
  const brackets = [...header.matchAll(/[([{]([^)\]}]*)[)\]}]/g)].map((match) => match[1] ?? '');
  const outside = header.replace(/[([{][^)\]}]*[)\]}]/g, ' ');
  const all = wordsOf(outside);
  const currency = [...all, ...brackets.flatMap(wordsOf), ...symbolsOf(header)]
    .map(currencyOf)
    .find((code) => code !== null);
  return {
    words: all.filter((word) => !empty.has(word) && !/^\d+k?$/.test(word) && currencyOf(word) === null).join(' '),
    inBrackets: brackets.flatMap(wordsOf).join(' '),
    currency: currency ?? null,
  };
}

function wordsOf(text: string): string[] {
  return foldLatin(text.normalize('NFKC'))
    .replace(/([\p{Ll}\d])(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .replace(/(\p{L}{3})(\d+)$/gmu, '$1 $2')
    .replaceAll('#', ' no ')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

function symbolsOf(text: string): string[] {
  return text.match(/\p{Sc}/gu) ?? [];
}

/** Codes that are everyday words of headers as well ('ALL', 'TOP') are left out. */
function currencyOf(word: string): string | null {
  if (/^(all|top|try|mop|cup|pen|bob|gel|lak|lek|sos)$/.test(word)) return null;
  return word.length === 3 || /^\p{Sc}$/u.test(word) ? (parseMoney(`1 ${word}`)?.currency ?? null) : null;
}
