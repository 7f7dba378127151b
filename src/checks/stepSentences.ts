import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { Section } from '#core/step.ts';
import { maskMarkup } from '#prose/mentions/maskMarkup.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { placeInside } from '#prose/placeInside.ts';
import { blocksOfWords } from './blocksOfWords.ts';

/** A sentence of a section, with markup blanked. */
export interface SectionSentence {
  readonly section: Section;
  readonly text: string;
  readonly place: TextPlace;
}

/** The sentences of the steps in reading order; their headings and facts are not among them. */
export const stepSentences = rememberFor((build: Build): readonly SectionSentence[] =>
  build.instructions.sections.filter(({ role }) => role === 'step').flatMap(sentencesOfSection),
);

/** The sentences of one section; captions and table cells count as such. */
export function sentencesOfSection(section: Section): SectionSentence[] {
  return blocksOfWords(section).flatMap((block) =>
    sentencesOf(maskMarkup(block.quote)).flatMap(({ text, start }) => {
      const from = start + text.length - text.trimStart().length;
      const to = start + text.trimEnd().length;
      return from >= to ? [] : [{ section, text: text.trim(), place: placeInside(block, from, to) }];
    }),
  );
}
