import type { Build } from '#core/build.ts';
import { type SpokenText, spoken } from './spokenTexts.ts';

const tellsOfWrong = /^[ \t]*(?:[-*+][ \t]+)?(?:\*\*|__)?(?:mistake|cause|reading)(?:\*\*|__)?[ \t]*:.*$/gim;

/** The notes of the log, without what they tell of mistakes and readings: those values are wrong or momentary. */
export function loggedTexts(build: Build): SpokenText[] {
  return build.log.map(({ place }) => {
    const quote = place.quote.replace(tellsOfWrong, (line) => '.'.padEnd(line.length));
    return { words: spoken({ ...place, quote }, null).words, place, step: null };
  });
}
