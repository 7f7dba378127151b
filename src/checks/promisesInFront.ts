import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { type SpokenRow, type SpokenText, spokenInFront } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';

/** A sentence before the first step, or a cell of a table there with what it is a cell of: `Time: 3 h`. */
export interface FrontSentence {
  readonly text: string;
  /** Whether it stands where a guide speaks of the build as a whole, so that ‘it’ is the build. */
  readonly ofTheWhole: boolean;
  /** The place of characters of the text. */
  readonly placeAt: (from: number, to: number) => TextPlace;
}

const opening = /\b(?:time|long|duration|effort|costs?|budget|glance|overview|summary|introduction|facts)\b/iu;

/** What a guide promises before its first step, sentence by sentence. */
export function promisesInFront(build: Build): FrontSentence[] {
  return spokenInFront(build).flatMap(({ section: { role, depth, heading }, texts, rows }) => {
    const ofTheWhole = role === 'title' || depth === 0 || opening.test(heading);
    const told = [...texts.flatMap(sentencesIn), ...rows.flatMap((row, index) => labelled(row, rows[index - 1]))];
    return told.map((one) => ({ ...one, ofTheWhole }));
  });
}

type Sentence = Omit<FrontSentence, 'ofTheWhole'>;

function sentencesIn({ words, place }: SpokenText): Sentence[] {
  return sentencesOf(words).map(({ text, start }) => ({
    text,
    placeAt: (from, to) => placeInside(place, start + from, start + to),
  }));
}

/** A row of two cells names in the first what the second says; so does the heading of any column. */
function labelled({ header, cells }: SpokenRow, above: SpokenRow | undefined): Sentence[] {
  const pairs = (row: readonly SpokenText[]) => (row.length === 2 ? [[row[0], row[1]] as const] : []);
  return [
    ...(above?.header === header ? [] : pairs(header)),
    ...pairs(cells),
    ...cells.map((cell, index) => [header[index], cell] as const),
  ].flatMap(([label, cell]) => {
    if (label === undefined || cell === undefined || /\d/u.test(label.words)) return [];
    const lead = `${label.words.trim()}: `;
    return [
      {
        text: lead + cell.words,
        placeAt: (from, to) => placeInside(cell.place, Math.max(0, from - lead.length), to - lead.length),
      },
    ];
  });
}
