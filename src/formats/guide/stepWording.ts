import { remember } from '#core/remember.ts';
import { withoutNumber } from './nameOfSection.ts';
import table from './stepVerbs.json';

const verbs = new Set(table.verbs);
const alsoNouns = new Set(table.alsoNouns);
const leading = new Set(table.leading);
const after = new Set(table.after);
const others = new Set(table.others);

/** How surely words tell somebody to do something: 'maybe' where the verb could as well be a noun. */
export type Telling = 'yes' | 'maybe' | 'no';

/** Whether a heading tells somebody to do something, as 'Wire the ring' or 'Wiring the ring' does. */
export const tellingOfHeading = remember((heading): Telling => {
  const words = wordsOf(withoutNumber(heading));
  const plain = tellingOfWords(words);
  if (plain !== 'no' || words.length === 0) return plain;
  if (words.length > 1 && verbOfGerund(words[0] ?? '') !== null) return after.has(words[1] ?? '') ? 'yes' : 'maybe';
  return others.has(words.at(-1) ?? '') ? 'yes' : 'no';
});

/** How many sentences of a text tell somebody to do something. */
export function countTelling(text: string): number {
  return text.split(/[.!?:;]\s+|\n+/).filter((sentence) => tells(sentence)).length;
}

/** 'If the light stays dark, check the fuse' tells somebody to do something after its first comma. */
const tells = remember((sentence): boolean => {
  if (tellingOfWords(wordsOf(sentence)) === 'yes') return true;
  const main = /^\s*(?:if|when|once|after|before|while|until|to|as|using|with)\s[^,]*,\s+(.*)$/is.exec(sentence)?.[1];
  return main !== undefined && tellingOfWords(wordsOf(main)) === 'yes';
});

function tellingOfWords(all: readonly string[]): Telling {
  let words = all;
  while (words.length > 2 && leading.has(words[0] ?? '') && !isVerbBefore(words)) words = words.slice(1);
  const [first = '', second] = words;
  if (others.has(first)) return 'yes';
  if (alsoNouns.has(first)) {
    if (second !== undefined && (after.has(second) || /^[a-z]{1,3}\d/.test(second) || /^\d/.test(second))) return 'yes';
    return 'maybe';
  }
  return verbs.has(first) ? 'yes' : 'no';
}

/** 'start' leads ('start by …') but is a verb of its own before an article. */
function isVerbBefore(words: readonly string[]): boolean {
  return alsoNouns.has(words[0] ?? '') && after.has(words[1] ?? '');
}

/** 'wiring' gives 'wire', 'cutting' 'cut'. */
function verbOfGerund(word: string): string | null {
  const stem = /^(.{2,})ing$/.exec(word)?.[1];
  if (stem === undefined) return null;
  const forms = [stem, `${stem}e`, stem.replace(/(.)\1$/, '$1')];
  return forms.find((form) => verbs.has(form) || alsoNouns.has(form)) ?? null;
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{M}\p{N}][\p{L}\p{M}\p{N}'’-]*/gu) ?? [];
}
