import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { Section } from '#core/step.ts';
import { sentencesIn } from './sentencesIn.ts';

/** A sentence with the section that it stands in, markup blanked and blanks around it cut. */
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
  return sentencesIn(section).flatMap(({ text, place }) => {
    const words = text.trim();
    return words === '' ? [] : [{ section, text: words, place }];
  });
}
