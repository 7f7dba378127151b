import type { Build } from '#core/build.ts';
import type { SpokenText } from '../mentions/spokenTexts.ts';
import table from './terms.json';

const asks =
  /\b(?:you (?:can|could|should|must|need to|know|have|are able)|experience|comfortable|familiar|able to|skills?|prerequisites?|basic|basics of|knowledge of)\b/i;
const denies = /\b(?:no|not|never|without|don['’]t|doesn['’]t|needn['’]t|nothing|beginners?)\b/i;

/** Sentences that say what a builder can do already: the skills of the settings, and the guide's opening. */
export function openingWords({ settings, instructions }: Build, texts: readonly SpokenText[]): { words: string }[] {
  const first = instructions.sections.find(({ role }) => role === 'step');
  const opening = texts
    .filter(
      ({ place, step }) =>
        step === null && (first === undefined || (place.file === first.file && place.span[0] < first.place.span[0])),
    )
    .flatMap(({ words }) => words.split(/(?<=[.!?])\s+/))
    .filter((sentence) => asks.test(sentence));
  return [...settings.skills, ...opening].filter((sentence) => !denies.test(sentence)).map((words) => ({ words }));
}

/** Fields of the trade that a builder is asked to know. */
export function fieldsKnown(build: Build, texts: readonly SpokenText[]): Set<string> {
  const words = openingWords(build, texts).flatMap(
    (sentence) => sentence.words.toLowerCase().match(/[\p{L}\p{N}-]+/gu) ?? [],
  );
  const said = new Set(words);
  return new Set(
    Object.entries(table.skills)
      .filter(([, names]) => names.some((name) => said.has(name)))
      .map(([field]) => field),
  );
}
