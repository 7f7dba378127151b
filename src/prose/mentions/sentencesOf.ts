import { remember } from '#core/remember.ts';

/** A sentence of a text; `start` is the UTF-16 code unit at which it begins. */
export interface Sentence {
  readonly text: string;
  readonly start: number;
}

/** Cuts running text at full stops, question and exclamation marks that a blank follows, and at semicolons. */
export const sentencesOf = remember((text): readonly Sentence[] =>
  [...text.matchAll(/(?:[^.!?;]|[.!?](?=\S))+[.!?;]*/gu)].map((match) => ({
    text: match[0],
    start: match.index,
  })),
);
