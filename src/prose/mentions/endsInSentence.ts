import type { Endpoint } from '#core/connection.ts';
import type { Ref } from '#core/part.ts';
import { remember } from '#core/remember.ts';
import { parseEndpoint, parsePin } from '#notation/pins.ts';
import type { KnownThings } from '../knownThings.ts';

export interface FoundEnd {
  readonly end: Endpoint;
  readonly start: number;
  readonly stop: number;
  readonly confidence: number;
}

export interface EndContext {
  readonly known: KnownThings;
  /** The one board that runs code, where there is one alone. */
  readonly only: Ref | null;
  readonly isWired: (end: Endpoint) => boolean;
}

const ref = '(?<ref>[A-Z]{1,4}\\d{1,5})';
const pin = '(?<pin>[A-Z0-9][A-Za-z0-9_+]{0,9}[+-]?)';
const edge = '(?<![\\p{L}\\p{N}_./\\\\-])';
const dotted = new RegExp(`${edge}${ref}\\.(?<pin>[^\\s,;:()\\[\\]|"'“”→–—]+)`, 'gu');
const wordedAfter = new RegExp(`${edge}${ref},?\\s+[Pp]in\\s+${pin}(?![\\p{L}\\p{N}])`, 'gu');
const wordedBefore = new RegExp(
  `${edge}[Pp]in\\s+${pin}(?:\\s*\\([^()]*\\))?\\s+(?:of|on)\\s+(?:the\\s+)?${ref}(?![\\p{L}\\p{N}_]|\\.[\\p{L}\\p{N}])`,
  'gu',
);
const bare = new RegExp(`${edge}${pin}\\s+(?:of|on)\\s+${ref}(?![\\p{L}\\p{N}_]|\\.[\\p{L}\\p{N}])`, 'gu');
const ofTheBoard = new RegExp(
  `${edge}(?:[Pp]in\\s+)?(?<pin>[A-Z]{1,6}_?\\d{1,3})\\s+(?:of|on)\\s+the\\s+(?:module|board|micro-?controller|controller|mcu)(?![\\p{L}\\p{N}])`,
  'gu',
);
const fileEnding = /^(?:jpe?g|png|svg|webp|gif|pdf|md|csv|txt|ya?ml|json|ino|cpp|c|h|hpp|py|stl|step|scad|3mf|zip)$/;
const ports: ReadonlySet<string> = new Set(['digital', 'analogue', 'gpio', 'port']);

/** The pins of known parts that a sentence names, in order. */
export function endsInSentence(sentence: string, context: EndContext): FoundEnd[] {
  const written = writtenIn(sentence);
  if (written === null) return [];
  const found = [
    ...read(written.dotted, (end) => !fileEnding.test(end.pin), 0.95, context),
    ...read(written.wordedAfter, () => true, 0.9, context),
    ...read(written.wordedBefore, () => true, 0.9, context),
    ...read(written.bare, (end) => ports.has(parsePin(end.pin).family) || context.isWired(end), 0.8, context),
    ...(context.only === null
      ? []
      : read(written.ofTheBoard, (end) => ports.has(parsePin(end.pin).family), 0.7, context)),
  ].sort((a, b) => a.start - b.start);
  return found.filter(({ start }, index) => start >= Math.max(0, ...found.slice(0, index).map(({ stop }) => stop)));
}

type Form = 'dotted' | 'wordedAfter' | 'wordedBefore' | 'bare' | 'ofTheBoard';
type Written = Readonly<Record<Form, readonly RegExpExecArray[]>>;

/** What looks like pins, known or not; null where nothing does. */
const writtenIn = remember((sentence): Written | null => {
  const written = {
    dotted: [...sentence.matchAll(dotted)],
    wordedAfter: [...sentence.matchAll(wordedAfter)],
    wordedBefore: [...sentence.matchAll(wordedBefore)],
    bare: [...sentence.matchAll(bare)],
    ofTheBoard: [...sentence.matchAll(ofTheBoard)],
  };
  return Object.values(written).some((matches) => matches.length > 0) ? written : null;
});

function read(
  matches: readonly RegExpExecArray[],
  fits: (end: Endpoint) => boolean,
  confidence: number,
  { known, only }: EndContext,
): FoundEnd[] {
  return matches.flatMap((match) => {
    const named = match.groups?.ref ?? only ?? '';
    const end = parseEndpoint(`${named}.${match.groups?.pin ?? ''}`, known.refs);
    if (end === null || !fits(end)) return [];
    const length = match[0].replace(/[.!?]+$/, '').length;
    return [{ end, start: match.index, stop: match.index + length, confidence }];
  });
}
