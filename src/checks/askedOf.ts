import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';

/** One thing that must be told of a part, and the words that tell it. */
export interface Asked {
  readonly what: string;
  readonly words: RegExp;
}

/** What neither the rows of some parts nor the guide tells. */
export function notTold(asked: readonly Asked[], parts: readonly Part[], { instructions }: Build): Asked[] {
  const told = [
    ...parts.map(({ place }) => place.quote),
    ...instructions.sections.flatMap(({ heading, facts, blocks }) => [
      heading,
      ...facts.map(({ value }) => value),
      ...blocks.map(({ place }) => place.quote),
    ]),
  ].join('\n');
  return asked.filter(({ words }) => !words.test(told));
}
