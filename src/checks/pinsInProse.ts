import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { type SpokenText, spokenRows, spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { nameWords } from './controllerEnds.ts';

/** A pin of the controller that the text names in passing, with the words that tell what it is for. */
export interface PinPhrase {
  readonly pin: string;
  readonly words: ReadonlySet<string>;
  readonly place: TextPlace;
}

/** Pins in sentences and table rows of the guide such as 'OLED SDA to GPIO 21'; each clause with one pin, no more. */
export function pinsInProse(build: Build): PinPhrase[] {
  const inSentences = spokenTexts(build).flatMap((spoken) =>
    sentencesOf(spoken.words).flatMap(({ text, start }) =>
      clausesOf(text).flatMap((clause) => phraseIn(clause.text, clause.text, spoken, start + clause.start)),
    ),
  );
  const inRows = spokenRows(build).flatMap(({ header, cells }) => {
    const row = cells.map(({ words }) => words).join(' | ');
    const found = cells.flatMap((cell, at) => {
      const heading = header[at]?.words ?? '';
      const bare = /^\s*`?(?:D?\d{1,2}|A\d)`?\s*$/i.test(cell.words) && boardHeading.test(heading);
      return phraseIn(bare ? `pin ${cell.words.trim()}` : cell.words, row, cell, 0);
    });
    return found.length === 1 ? found : [];
  });
  return [...inSentences, ...inRows];
}

const boardHeading = /\b(?:esp\w*|arduino|nodemcu|board|gpio|controller|mcu|pico|uno|nano)\b/i;
const token =
  /\b(?:(?:GPIO|GP|IO)[ _-]?(?<chip>\d{1,2})|(?:digital |analogue |analog )?pin (?:number |no\.? ?|# ?)?(?<pin>D?\d{1,2}|A\d)|(?<label>D\d{1,2}|A\d))(?![\p{L}\d.,]*\d)(?!\s?(?:mm|V|mA)\b)/giu;
/** Words that say something else of a pin than what hangs on it. */
const otherTalk =
  /\b(?:not|never|instead|unused|free|old|formerly|previously|or|example|such as|measure|row|column)\b/i;
/** 'pin 3 of the buffer' is no pin of the controller. */
const ofAnother =
  /^\s*[`)]?\s*(?:of|on) (?!(?:the |a |your )?(?:board|controller|esp|arduino|nodemcu|micro|uno|nano|mega|pico|dev))/i;

function clausesOf(sentence: string): { text: string; start: number }[] {
  return [...sentence.matchAll(/(?:(?!,|\band\b)[\s\S])+/giu)].map((match) => ({ text: match[0], start: match.index }));
}

function phraseIn(text: string, around: string, spoken: SpokenText, start: number): PinPhrase[] {
  const found = [...text.matchAll(token)];
  const [only] = found;
  if (only === undefined || found.length > 1 || otherTalk.test(around)) return [];
  if (ofAnother.test(text.slice(only.index + only[0].length))) return [];
  const rest = around.replace(only[0], ' ');
  const from = text === around ? start + only.index : 0;
  const length = text === around ? only[0].length : spoken.words.length;
  return [
    {
      pin: only.groups?.chip ?? only.groups?.pin ?? only.groups?.label ?? '',
      words: new Set(nameWords(rest.replace(/[`*_]/g, ' '))),
      place: placeInside(spoken.place, from, from + length),
    },
  ];
}
