import type { Build } from '#core/build.ts';
import type { FoundHazard, HeardCaution } from '#core/hazard.ts';
import { type SignalWord, signalWords } from '#core/step.ts';
import type { HeardGuide, MarkedCaution } from './hearGuide.ts';
import type { LibraryCaution } from './library.ts';
import { warns } from './messages.ts';
import { phrasesOf } from './phrases.ts';
import { isReadBefore, type ReadingPlace, readingPlaceOf } from './readingPlace.ts';
import type { Sighting } from './sightings.ts';

/** What the guide says of a hazard, and whether that is enough and in time. */
export function coverOf(
  entry: LibraryCaution,
  bite: Sighting,
  sightings: readonly Sighting[],
  heard: HeardGuide,
  build: Build,
): Pick<FoundHazard, 'cover' | 'cautions'> {
  const start = workStarts(bite, sightings, build);
  const cautions = cautionsOn(entry, heard).map((caution): HeardCaution => {
    const place = readingPlaceOf(build, caution.place);
    const isBefore = start === null || place === null || isReadBefore(place, start);
    return { ...caution, when: isBefore ? 'before' : 'after' };
  });
  const before = cautions.filter(({ when }) => when === 'before');
  if (before.length === 0) return { cover: cautions.length > 0 ? 'late' : 'uncovered', cautions };
  return { cover: before.some(({ word }) => isEnough(word, entry.word)) ? 'covered' : 'weak', cautions };
}

/** Whether a signal word is at least as grave as another. Plain words leave the grading open. */
export function isEnough(word: SignalWord | null, least: SignalWord): boolean {
  return word === null || signalWords.indexOf(word) <= signalWords.indexOf(least);
}

/**
 * Where in the guide the dangerous work begins; null where no step is known to. A step whose facts alone name the
 * thing does not tell where in it, so that any caution in it is in time.
 */
function workStarts(bite: Sighting, sightings: readonly Sighting[], build: Build): ReadingPlace | null {
  if (bite.step === null) return null;
  const section = build.instructions.sections.findIndex(({ id }) => id === bite.step);
  const acts = sightings.flatMap(({ as, step, place }) =>
    step === bite.step && as === 'act' && place.kind === 'text' ? (readingPlaceOf(build, place) ?? []) : [],
  );
  const first = Math.min(...acts.map(({ at }) => at));
  return { section, at: acts.length === 0 ? Number.POSITIVE_INFINITY : first };
}

/** Cautions about a hazard, in reading order of each kind: marked ones, and sentences that warn in plain words. */
function cautionsOn(entry: LibraryCaution, { marked, sentences }: HeardGuide): MarkedCaution[] {
  const speaks = phrasesOf(entry.speaksOf);
  const plainly = phrasesOf(entry.plainly);
  const aloud = marked.filter(({ message }) => speaks.find(message) !== null || plainly.find(message) !== null);
  const plain = sentences.filter(
    ({ words, isHeading }) =>
      !isHeading && ((speaks.find(words) !== null && warns(words)) || plainly.find(words) !== null),
  );
  return [...aloud, ...plain.map(({ words, place, step }) => ({ word: null, message: words.trim(), place, step }))];
}
