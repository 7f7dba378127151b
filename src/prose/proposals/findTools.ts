import bench from './benchTools.json';
import { type Word, wordsOf } from './words.ts';

/** A tool of the trade, by any of its names; from `from` to `to` of the sentence. */
export interface ToolFound {
  /** The first of its names. */
  readonly tool: string;
  /** True for a name that means other things too, such as 'file'. */
  readonly isAmbiguous: boolean;
  readonly from: number;
  readonly to: number;
}

/** Tools that a sentence names with words of the trade, the longest names first. */
export function findTools(sentence: string): ToolFound[] {
  const words = wordsOf(sentence);
  const found: ToolFound[] = [];
  for (let at = 0; at < words.length; at++) {
    const name = byFirst.get(words[at]?.form ?? '')?.find(({ forms }) => stands(forms, words, at, sentence));
    const last = words[at + (name?.forms.length ?? 1) - 1];
    const first = words[at];
    if (name === undefined || first === undefined || last === undefined) continue;
    found.push({ tool: name.tool, isAmbiguous: name.isAmbiguous, from: first.from, to: last.to });
    at += name.forms.length - 1;
  }
  return found;
}

interface ToolName {
  readonly tool: string;
  readonly forms: readonly string[];
  readonly isAmbiguous: boolean;
}

function stands(forms: readonly string[], words: readonly Word[], at: number, sentence: string): boolean {
  return forms.every((form, index) => {
    const word = words[at + index];
    const before = words[at + index - 1];
    if (word?.form !== form) return false;
    return index === 0 || (before !== undefined && /^[\s\-‐]+$/u.test(sentence.slice(before.to, word.from)));
  });
}

const ambiguous = new Set(bench.ambiguous);
const byFirst = new Map<string, ToolName[]>();
for (const names of bench.names) {
  for (const name of names) {
    const forms = wordsOf(name).map(({ form }) => form);
    const entry = { tool: names[0] ?? name, forms, isAmbiguous: ambiguous.has(name) };
    const first = forms[0] ?? '';
    byFirst.set(
      first,
      [...(byFirst.get(first) ?? []), entry].sort((a, b) => b.forms.length - a.forms.length),
    );
  }
}
