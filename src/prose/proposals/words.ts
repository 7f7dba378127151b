import { remember } from '#core/remember.ts';
import { tokensOf } from '#notation/names.ts';
import { findQuantities, formatQuantity } from '#notation/value.ts';
import trade from './tradeWords.json';

/** One word of a text, as names are compared by. `from` and `to` are UTF-16 code units of the text. */
export interface Word {
  /** The form that all spellings share. */
  readonly form: string;
  /** Other names that it may stand for. */
  readonly also: readonly string[];
  readonly from: number;
  readonly to: number;
  readonly isPlural: boolean;
  /** True for a type number or a name in capitals, which says more than a common word. */
  readonly isName: boolean;
}

const standsFor = new Map(
  trade.same.flatMap(([first = '', ...others]) => others.map((other) => [other, first] as const)),
);
const mayMean: ReadonlyMap<string, string> = new Map(Object.entries(trade.mayMean));
const pattern =
  /\p{Lu}{2,}[- ]?\d+(?:[- ]?\p{Lu}\p{N}*)?(?![\p{L}\p{N}])|[\p{L}\p{N}]+(?:[.,](?=\p{N})[\p{L}\p{N}]+)*/gu;
const size = /^(?:m\d+(?:[.,]\d+)?|\d.*)$/u;

/** The words of a text; numbers with units are one word, and so are type numbers and names of two words. */
export const wordsOf = remember((text): readonly Word[] => joined(singles(text), text));

/** What a word that has the form of a size says: `m3`, `4.7kΩ`, `5mm`. */
export function isSize(form: string): boolean {
  return size.test(form);
}

function singles(text: string): Word[] {
  const words: Word[] = [];
  let at = 0;
  for (const { quantity, start, end } of findQuantities(text)) {
    words.push(...plainWords(text, at, start));
    const form = formatQuantity(quantity.kind, quantity.si).replace(' ', '');
    words.push({ form, also: [], from: start, to: end, isPlural: false, isName: false });
    at = end;
  }
  return [...words, ...plainWords(text, at, text.length)];
}

function plainWords(text: string, start: number, end: number): Word[] {
  return [...text.slice(start, end).matchAll(pattern)].map((match) =>
    wordFrom(match[0], start + match.index, start + match.index + match[0].length),
  );
}

function wordFrom(written: string, from: number, to: number): Word {
  const isType = /\p{L}/u.test(written) && /\p{N}/u.test(written) && !size.test(written.toLowerCase());
  const form = isType ? written.toLowerCase().replace(/[- ]/g, '') : (singularOf(written) ?? written.toLowerCase());
  const isPlural = /[a-z]s$/u.test(written) && !form.endsWith('s');
  return { ...meaning(form), from, to, isPlural, isName: isType || /^\p{Lu}[\p{Lu}\p{N}]+$/u.test(written) };
}

const singularOf = remember((written): string | undefined => tokensOf(written)[0]);

function meaning(form: string): { form: string; also: readonly string[] } {
  const same = standsFor.get(form) ?? form;
  const other = mayMean.get(form) ?? mayMean.get(same);
  const also = [same === form ? undefined : form, other, other === undefined ? undefined : standsFor.get(other)];
  return { form: same, also: [...new Set(also)].filter((one) => one !== undefined && one !== same) as string[] };
}

/** Names of two words, such as 'cable tie', as one word. */
function joined(words: readonly Word[], text: string): Word[] {
  const result: Word[] = [];
  for (let at = 0; at < words.length; at++) {
    const word = words[at];
    const next = words[at + 1];
    if (word === undefined) continue;
    const same =
      next !== undefined && /^[ \-‐]$/u.test(text.slice(word.to, next.from))
        ? standsFor.get(`${rawOf(text, word)} ${rawOf(text, next)}`)
        : undefined;
    if (same === undefined || next === undefined) {
      result.push(word);
      continue;
    }
    const other = mayMean.get(same);
    result.push({ ...next, form: same, also: other === undefined ? [] : [other], from: word.from });
    at++;
  }
  return result;
}

function rawOf(text: string, { from, to }: Word): string {
  const written = text.slice(from, to);
  return singularOf(written) ?? written.toLowerCase();
}
