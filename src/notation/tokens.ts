import { findQuantities } from './findQuantities.ts';
import { formatQuantity } from './formatQuantity.ts';
import { foldLatin } from './slug.ts';

/**
 * The words of a text for comparing descriptions: lower case, Latin accents folded, the s of a plural dropped. A number
 * with its unit is one token in the one notation, case kept (`4k7` and `4.7 kΩ` are both `4.7kΩ`); `M2.5`, `1N4148` and
 * `GPIO_NUM_4` stay whole.
 */
export function tokensOf(text: string): string[] {
  const tokens: string[] = [];
  let at = 0;
  for (const { quantity, start, end } of findQuantities(text)) {
    tokens.push(...wordsOf(text.slice(at, start)), formatQuantity(quantity.kind, quantity.si).replace(' ', ''));
    at = end;
  }
  return [...tokens, ...wordsOf(text.slice(at))];
}

function wordsOf(text: string): string[] {
  const plain = foldLatin(text.normalize('NFKC'))
    .toLowerCase()
    .replace(/['’]s\b/gu, '');
  return (plain.match(/[\p{L}\p{M}\p{N}_]+(?:(?<=\d)[.,](?=\d)[\p{N}]+[\p{L}\p{N}_]*)*/gu) ?? []).map(singular);
}

/** Words that end in s without being plurals, and their plurals. */
const exceptions: Partial<Record<string, string>> = {
  lens: 'lens',
  lenses: 'lens',
  gas: 'gas',
  gases: 'gas',
  bias: 'bias',
  canvas: 'canvas',
  atlas: 'atlas',
  always: 'always',
  series: 'series',
  buses: 'bus',
};

function singular(word: string): string {
  const known = Object.hasOwn(exceptions, word) ? exceptions[word] : undefined;
  if (known !== undefined) return known;
  if (word.length < 4 || !/[a-z]s$/u.test(word) || /(?:ss|us|is)$/u.test(word)) return word;
  if (/[^aeiou]ies$/u.test(word) && word.length > 4) return `${word.slice(0, -3)}y`;
  return /(?:[xz]|ch|sh|ss)es$/u.test(word) ? word.slice(0, -2) : word.slice(0, -1);
}
