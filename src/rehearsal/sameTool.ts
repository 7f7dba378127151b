import { remember } from '#core/remember.ts';

/** Whether two names speak of one tool: every word of the shorter stands in the longer ('iron', 'soldering iron'). */
export function sameTool(a: string, b: string): boolean {
  const [first, second] = [wordsOf(a), wordsOf(b)];
  const [few, many] = first.size <= second.size ? [first, second] : [second, first];
  return few.size > 0 && [...few].every((word) => many.has(word));
}

const wordsOf = remember((name): ReadonlySet<string> => {
  const words = name.toLowerCase().match(/[\p{L}\p{N}]+(?:[.,]\d+)?/gu) ?? [];
  return new Set(words.filter((word) => !idle.has(word)).map(singular));
});

const idle = new Set(['a', 'an', 'the', 'of', 'or', 'and', 'for', 'with', 'small', 'pair', 'set', 'your']);

function singular(word: string): string {
  return word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}
