import type { FoundHazard, HeardCaution } from '#core/hazard.ts';
import type { TextPlace } from '#core/place.ts';
import { type SignalWord, signalWords } from '#core/step.ts';
import { sentencesOf } from '../mentions/sentencesOf.ts';
import type { HeardGuide, MarkedCaution } from './hearGuide.ts';
import type { LibraryCaution } from './library.ts';
import { warns } from './messages.ts';
import { phrasesOf } from './phrases.ts';
import { isReadBefore, readingPlaceOf, within } from './readingPlace.ts';
import type { Scene, Sighting } from './sightings.ts';

/** What the guide says of a hazard, and whether that is enough and in time. */
export function coverOf(
  entry: LibraryCaution,
  bite: Sighting,
  sightings: readonly Sighting[],
  heard: HeardGuide,
  scene: Scene,
): Pick<FoundHazard, 'cover' | 'cautions'> {
  const start = workStarts(entry, bite, sightings, scene);
  const cautions = cautionsOn(entry, sightings, heard).map((caution): HeardCaution => {
    const place = readingPlaceOf(scene.build, caution.place);
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
function workStarts(entry: LibraryCaution, bite: Sighting, sightings: readonly Sighting[], scene: Scene) {
  const { build } = scene;
  if (bite.step === null) return null;
  const section = build.instructions.sections.findIndex(({ id }) => id === bite.step);
  const here = sightings.filter(({ step }) => step === bite.step);
  const acts = here.flatMap(({ as, place }) => (as === 'act' && place.kind === 'text' ? [place] : []));
  const starts = (acts.length > 0 ? acts : workOnNamed(entry, bite, sightings, scene)).flatMap(
    (place) => readingPlaceOf(build, place)?.at ?? [],
  );
  return { section, at: Math.min(Number.POSITIVE_INFINITY, ...starts) };
}

/** The work of a step with a thing that its facts name. */
function workOnNamed(
  { triggers: { handled = false, work = [] } }: LibraryCaution,
  bite: Sighting,
  sightings: readonly Sighting[],
  { actions, sentences }: Scene,
): TextPlace[] {
  const names = handled ? sightings.flatMap((one) => one.names ?? []) : [];
  return actions
    .filter(({ step, told, kind, place }) => {
      if (step !== bite.step || told !== 'do') return false;
      const sentence = sentences.find((one) => within(one.place, place));
      if (sentence === undefined || sentence.isHeading) return false;
      return work.includes(kind) || (names.length > 0 && phrasesOf(names).find(sentence.words) !== null);
    })
    .map(({ place }) => place);
}

/** Cautions about a hazard, in reading order of each kind: marked ones, and sentences that warn in plain words. */
function cautionsOn(entry: LibraryCaution, sightings: readonly Sighting[], { marked, sentences }: HeardGuide) {
  const names = [...new Set(sightings.flatMap((one) => one.names ?? []))];
  const speaks = phrasesOf(withNames(entry.speaksOf, names));
  const plainly = phrasesOf(withNames(entry.plainly, names));
  const hints = phrasesOf(entry.hints);
  const plainHints = phrasesOf(entry.plainHints);
  const others = phrasesOf(entry.others);
  const isAbout = (message: string) =>
    sentencesOf(message).some(({ text }) => speaks.find(text) !== null) ||
    ([speaks, hints].some((phrases) => phrases.find(message) !== null) && others.find(message) === null);
  const isPlain = (message: string) =>
    plainly.find(message) !== null || (plainHints.find(message) !== null && others.find(message) === null);
  const aloud = marked.filter(({ message }) => isAbout(message) || isPlain(message));
  const plain = sentences.filter(
    ({ words, isHeading }) => !isHeading && ((warns(words) && isAbout(words)) || isPlain(words)),
  );
  return [
    ...aloud,
    ...plain.map(({ words, place, step }): MarkedCaution => ({ word: null, message: words.trim(), place, step })),
  ];
}

/** Phrases with `@` written as the names of the parts that bring the hazard; without names they say nothing. */
function withNames(phrases: readonly string[], names: readonly string[]): readonly string[] {
  if (!phrases.some((phrase) => phrase.includes('@'))) return phrases;
  return phrases.flatMap((phrase) =>
    phrase.includes('@') ? names.map((name) => phrase.replaceAll('@', () => name)) : [phrase],
  );
}
