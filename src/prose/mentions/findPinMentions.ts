import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Endpoint } from '#core/connection.ts';
import type { Controller, PinMention } from '#core/facts.ts';
import type { KnownThings } from '../knownThings.ts';
import { placeInside } from '../placeInside.ts';
import { endsInSentence, type FoundEnd } from './endsInSentence.ts';
import { sentencesOf } from './sentencesOf.ts';
import { type SpokenText, spokenRows, spokenTexts } from './spokenTexts.ts';

/** Pins that the guide's prose speaks of; where one clause joins two of them, each has the other. */
export function findPinMentions(
  build: Build,
  known: KnownThings,
  controllers: readonly Claim<Controller>[],
): Claim<PinMention>[] {
  const wired = new Set(build.connections.flatMap(({ from, to }) => [nameOf(from), nameOf(to)]));
  const only = controllers.length === 1 ? (controllers[0]?.value.ref ?? null) : null;
  const texts = [...spokenTexts(build), ...spokenRows(build).flatMap(({ cells }) => cells)];
  return texts.flatMap((text) => {
    return sentencesOf(text.words).flatMap(({ text: sentence, start }) => {
      const ends = endsInSentence(sentence, { known, only, isWired: (end) => wired.has(nameOf(end)) });
      const joined = ends.length === 2 && joins(sentence, ends);
      return ends.map((end, index) => mentionOf(end, joined ? (ends[1 - index]?.end ?? null) : null, text, start));
    });
  });
}

function mentionOf(
  found: FoundEnd,
  other: Endpoint | null,
  { place, step }: SpokenText,
  start: number,
): Claim<PinMention> {
  return {
    value: { end: found.end, other, step },
    basis: 'read',
    places: [placeInside(place, start + found.start, start + found.stop)],
    confidence: found.confidence,
  };
}

const joiningVerb =
  /\b(?:solder|connect|wire|join|run|runs|link|attach|plug|tie|goes|lead|leads|bridge|route|feed)(?:s|ed|ing)?\b/iu;
const otherTalk = /\b(?:measur\w*|probe\w*|reads?|reading|volts?|ohms?|multimeter|meter|beeps?|not|never|don't)\b/iu;
const arrow = /^\s*(?:[–—→↔]|-+>|\s-\s)\s*$/u;
/** One 'to' right before the second pin, and no other pair begun between the two. */
const towards =
  /^(?!.*\b(?:and|or)\b)(?!.*\b(?:to|next|close|up|down|back)\b.*\bto\b).*\b(?:to|with|into|onto)\s+(?:(?:the|its|pin|pad|lug|hole|lead)\s+)*$/iu;
const pairBegins = /\b(?:connect|join|bridge)\s+(?:(?:the|pins|pads|lugs)\s+)*$/iu;

/** 'Solder it from U1.IO16 to R1.1' and `U1.IO16 → R1.1` join two pins; a reading between two pins does not. */
function joins(sentence: string, ends: readonly FoundEnd[]): boolean {
  const [first, second] = ends;
  if (first === undefined || second === undefined || otherTalk.test(sentence)) return false;
  if (nameOf(first.end) === nameOf(second.end)) return false;
  const lead = sentence.slice(0, first.start);
  const between = sentence.slice(first.stop, second.start);
  if (arrow.test(between)) return first.end.ref !== second.end.ref;
  if (/^\s*and\s*$/u.test(between)) return pairBegins.test(lead);
  return joiningVerb.test(lead) && !/\bto\s+(?:the\s+)?$/iu.test(lead) && towards.test(between);
}

function nameOf({ ref, pin }: Endpoint): string {
  return `${ref}.${pin}`.toUpperCase();
}
