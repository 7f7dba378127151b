import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { type SignalWord, type StepId, signalWords } from '#core/step.ts';
import { plainMessage } from '../facts/reading.ts';
import { sentencesOf } from '../mentions/sentencesOf.ts';
import { spokenTexts } from '../mentions/spokenTexts.ts';
import { placeInside } from '../placeInside.ts';
import { within } from './readingPlace.ts';

/** A sentence of the guide as a builder hears it. */
export interface GuideSentence {
  readonly words: string;
  readonly place: TextPlace;
  readonly step: StepId | null;
  readonly isHeading: boolean;
}

/** A passage that is marked as a caution: by a signal word in front, or by the heading that it stands under. */
export interface MarkedCaution {
  readonly word: SignalWord | null;
  readonly message: string;
  readonly place: TextPlace;
  readonly step: StepId | null;
}

/** What the guide says, with what is marked as a caution set apart from what is told. */
export interface HeardGuide {
  readonly sentences: readonly GuideSentence[];
  readonly marked: readonly MarkedCaution[];
}

/** Reads the guide's facts and prose for cautions and for everything else. */
export function hearGuide(build: Build): HeardGuide {
  const { sections } = build.instructions;
  const marked: MarkedCaution[] = sections.flatMap((section) =>
    section.facts.flatMap(({ label, value, place }) => {
      const word = wordOf(label);
      return word === null || value === '' ? [] : [{ word, message: plainMessage(value), place, step: section.id }];
    }),
  );
  const sentences: GuideSentence[] = [];
  const headings = new Set(sections.map(({ place }) => place));
  const safety = sections
    .filter(({ heading, parents }) => [heading, ...parents].some((words) => safetyHeading.test(words)))
    .flatMap(({ blocks }) => blocks.map(({ place }) => place));
  let pending: SignalWord | null = null;
  for (const { words, place, step } of spokenTexts(build)) {
    const isHeading = headings.has(place);
    const opened = isHeading ? null : openingWord(words);
    const word = opened?.word ?? (isHeading ? null : pending);
    const message = words.slice(opened?.length ?? 0).trim();
    pending = message === '' ? (opened?.word ?? null) : null;
    if (message === '') continue;
    if (word !== null || (!isHeading && safety.some((one) => within(one, place)))) {
      marked.push({ word, message, place, step });
      continue;
    }
    for (const { text, start } of sentencesOf(words))
      sentences.push({ words: text, place: placeInside(place, start, start + text.length), step, isHeading });
  }
  return { sentences, marked };
}

const safetyHeading =
  /\b(?:safety(?! (?:switch|pin|glasses|valve))|warnings?|cautions?|hazards?|dangers?|disclaimers?)\b/iu;

/** 'Warning: …', '**Danger** …' and 'CAUTION …', but not 'Notice the arrow'. */
function openingWord(words: string): { word: SignalWord; length: number } | null {
  const match = /^[\s\p{P}\p{S}]*(\p{L}+)(\s*[:!.–—-]+|\s{2,}|\s*$|\s)/u.exec(words);
  const [whole, written = '', after = ''] = match ?? [];
  const word = wordOf(written.toLowerCase());
  const isSetApart = after !== ' ' || written === written.toUpperCase();
  return word === null || whole === undefined || !isSetApart ? null : { word, length: whole.length };
}

function wordOf(written: string): SignalWord | null {
  return (signalWords as readonly string[]).includes(written) ? (written as SignalWord) : null;
}
