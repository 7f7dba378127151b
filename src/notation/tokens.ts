import { remember } from '#core/remember.ts';
import { findQuantities } from './findQuantities.ts';
import { formatQuantity } from './formatQuantity.ts';
import { parseValue } from './parseValue.ts';
import { foldLatin } from './slug.ts';

/**
 * The words of a text for comparing descriptions: lower case, Latin accents folded, the s of a plural dropped. A number
 * with its unit is one token in the one notation, case kept (`4k7` and `4.7 kΩ` are both `4.7kΩ`); `M2.5`, `1N4148` and
 * `GPIO_NUM_4` stay whole.
 */
export const tokensOf = remember((text): readonly string[] => {
  const tokens: string[] = [];
  let at = 0;
  for (const { quantity, start, end } of findQuantities(text)) {
    tokens.push(...wordsOf(text.slice(at, start)), formatQuantity(quantity.kind, quantity.si).replace(' ', ''));
    at = end;
  }
  return [...tokens, ...wordsOf(text.slice(at))];
});

function wordsOf(text: string): string[] {
  const plain = foldLatin(text.normalize('NFKC')).replace(/['’]s\b/giu, '');
  return (plain.match(/[\p{L}\p{M}\p{N}_]+(?:(?<=\d)[.,](?=\d)[\p{L}\p{N}_]+)*/gu) ?? []).map(tokenOf);
}

/** Running text writes units loosely (`20ma`, `5v`), so that a word that begins with a digit is tried as a value. */
function tokenOf(word: string): string {
  const quantity = /^\d/u.test(word) ? parseValue(word) : null;
  return quantity === null ? singular(word.toLowerCase()) : formatQuantity(quantity.kind, quantity.si).replace(' ', '');
}

/** Words that end in s without being plurals, and their plurals. */
const exceptions: ReadonlyMap<string, string> = new Map([
  ['lens', 'lens'],
  ['lenses', 'lens'],
  ['gas', 'gas'],
  ['gases', 'gas'],
  ['bias', 'bias'],
  ['canvas', 'canvas'],
  ['always', 'always'],
  ['series', 'series'],
  ['buses', 'bus'],
  ['feet', 'foot'],
]);

function singular(word: string): string {
  const known = exceptions.get(word);
  if (known !== undefined) return known;
  if (word.length < 4 || !/[a-z]s$/u.test(word) || /(?:ss|us|is)$/u.test(word)) return word;
  if (/[^aeiou]ies$/u.test(word) && word.length > 4) return `${word.slice(0, -3)}y`;
  return /(?:x|ch|sh|ss)es$/u.test(word) ? word.slice(0, -2) : word.slice(0, -1);
}
