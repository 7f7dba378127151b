import type { Judged } from '#core/assembled.ts';
import type { Section, StepId } from '#core/step.ts';
import { blocksOfWords } from './blocksOfWords.ts';

/** Words by which a text says what is there when the work is right. */
const outcome =
  /\b(?:should|must|will|expect\w*|reads?|reading|shows?|showing|see|seen|lights?|lit|glows?|blinks?|flash(?:es|ing)|beeps?|hear|clicks|spins|turns|moves|starts|appears?|prints|displays|works?|working|boots|connects|responds?|means|otherwise|correct(?:ly)?|as (?:it|they) should|looks?|no (?:short|beep|light|reading)|free(?:ly)?|if)\b|\d\s?(?:mV|V|mA|A|k?Ω|M?Ω|ohms?|°C|Hz|%)(?![\p{L}\d])/iu;

/** 'Check if everything works' asks, and tells nothing of what is there when it does. */
const question =
  /\b(?:check|test|see|try|verify|make sure|confirm)(?:ing)? (?:if|whether|that) (?:\p{L}+ ){1,4}(?:works?|working|functions?|ok|okay|fine|correct(?:ly)?)\b/giu;

/** Whether a step says what a builder should find: as a fact, or in words. */
export function saysOutcome({ facts }: Judged, section: Section): boolean {
  return (
    declaresOutcome({ facts }, section.id) ||
    blocksOfWords(section).some(({ quote }) => outcome.test(quote.replace(question, ' ')))
  );
}

/** Whether a step declares a reading or what is there afterwards. */
export function declaresOutcome({ facts }: Pick<Judged, 'facts'>, id: StepId): boolean {
  const step = facts.steps[id];
  return step !== undefined && step.measures.length + step.expects.length > 0;
}
