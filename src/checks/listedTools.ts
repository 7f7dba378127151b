import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import { remember, rememberFor } from '#core/remember.ts';
import { blocksOfWords } from './blocksOfWords.ts';

/** Whether the guide has a list of tools, or steps that name theirs. */
export function namesTools({ build, facts }: Judged): boolean {
  const hasSection = build.instructions.sections.some(({ role, blocks }) => role === 'tools' && blocks.length > 0);
  return build.tools.length > 0 || hasSection || Object.values(facts.steps).some(({ tools }) => tools.length > 0);
}

/**
 * The words by which a builder learns of tools before the work starts, in lower case: the list of tools, what steps
 * declare, parts (a cable may be one), and the guide outside of its steps.
 */
export const wordsOfTools = rememberFor(({ build, facts }: Judged): string => {
  const declared = Object.values(facts.steps).flatMap(({ tools }) => tools.map(({ value }) => value));
  return [
    ...build.tools.map(({ name, note }) => `${name} ${note ?? ''}`),
    ...declared,
    ...build.parts.map(({ description, note }) => `${description} ${note ?? ''}`),
    ...outsideSteps(build),
  ]
    .join('\n')
    .toLowerCase();
});

function outsideSteps({ instructions }: Build): string[] {
  return instructions.sections
    .filter(({ role }) => role !== 'step')
    .flatMap((section) => blocksOfWords(section).map(({ quote }) => quote));
}

/** Whether one of the words, or word groups, stands in a text of lower case. */
export function holdsWord(text: string, words: readonly string[]): boolean {
  return words.some((word) => text.includes(word.toLowerCase()) && wholeWord(word).test(text));
}

const wholeWord = remember(
  (word) => new RegExp(`(?<![\\p{L}\\p{N}])${escaped(word.toLowerCase())}(?![\\p{L}\\p{N}])`, 'u'),
);

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
