import type { TextPlace } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { Section } from '#core/step.ts';
import { maskMarkup } from '#prose/mentions/maskMarkup.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { placeInside } from '#prose/placeInside.ts';
import { blocksOfWords } from './blocksOfWords.ts';

/** A sentence of a section without its markup; `after` is the one behind it in the same block, or nothing. */
export interface SpokenSentence {
  readonly text: string;
  readonly after: string;
  /** The same words with their markup. */
  readonly written: string;
  /** Half-open, in UTF-16 code units of the sentence. */
  placeOf(start: number, end: number): TextPlace;
  /** The whole sentence, without blanks around it. */
  readonly place: TextPlace;
  /** The paragraph, point or table that it stands in. */
  readonly block: TextPlace;
}

/** The sentences of a section's paragraphs, points and tables, in reading order. */
export const sentencesIn = rememberFor((section: Section): readonly SpokenSentence[] =>
  blocksOfWords(section).flatMap((block) => {
    const sentences = sentencesOf(maskMarkup(block.quote));
    return sentences.map(({ text, start }, index) => {
      const placeOf = (from: number, to: number) => placeInside(block, start + from, start + to);
      // Most sentences are only read.
      let known: TextPlace | null = null;
      return {
        text,
        after: sentences[index + 1]?.text ?? '',
        written: block.quote.slice(start, start + text.length),
        placeOf,
        get place() {
          known ??= placeOf(text.length - text.trimStart().length, text.trimEnd().length);
          return known;
        },
        block,
      };
    });
  }),
);
