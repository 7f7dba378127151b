import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { ValueMention } from '#core/facts.ts';
import type { TextPlace } from '#core/place.ts';
import { parseRefs } from '#notation/refs.ts';
import { parseValue } from '#notation/value.ts';
import type { KnownThings } from '../knownThings.ts';
import { placeInside } from '../placeInside.ts';
import { loggedTexts } from './loggedTexts.ts';
import { markedValues } from './markedValues.ts';
import { sentencesOf } from './sentencesOf.ts';
import { type SpokenRow, spoken, spokenRows, spokenTexts } from './spokenTexts.ts';
import { valueKind } from './valueKind.ts';
import { valuesInSentence } from './valuesInSentence.ts';

/** Values that prose, tables, notes and the log state for listed parts. Where a sentence is not certain, none. */
export function findValueMentions(build: Build, known: KnownThings): Claim<ValueMention>[] {
  const rows = spokenRows(build);
  const texts = [
    ...spokenTexts(build),
    ...rows.flatMap(({ cells }) => cells),
    ...build.instructions.sections.flatMap((section) => section.facts.map(({ place }) => spoken(place, section.id))),
    ...build.connections.flatMap(({ cells }) => (cells.note === undefined ? [] : [spoken(cells.note, null)])),
    ...loggedTexts(build),
  ];
  const found = texts.flatMap(({ words, place }) =>
    sentencesOf(words).flatMap(({ text, start }) => {
      const stated = valuesInSentence(text, known).map((one) => ({ ...one, marked: null }));
      return [...stated, ...markedValues(text, words, known)].flatMap(({ refs, quantity, marked, start: from, end }) =>
        mentionsOf(refs, { value: quantity, marked }, placeInside(place, start + from, start + end), known),
      );
    }),
  );
  return [...found, ...rows.flatMap((row) => valuesInRow(row, known))];
}

function mentionsOf(
  refs: readonly string[],
  told: Pick<ValueMention, 'value' | 'marked'>,
  place: TextPlace,
  known: KnownThings,
): Claim<ValueMention>[] {
  return refs.flatMap((ref) => {
    const part = known.partOfRef.get(ref);
    if (part === undefined) return [];
    return [{ value: { part: part.id, ref, ...told }, basis: 'read', places: [place], confidence: 0.8 }];
  });
}

/** A row with one cell of references, under a heading such as 'value' one cell that is nothing but a value. */
function valuesInRow({ header, cells }: SpokenRow, known: KnownThings): Claim<ValueMention>[] {
  const named = cells.find(({ words }) => {
    const { refs, problem } = parseRefs(words.trim());
    return refs.length > 0 && problem === null && refs.every((ref) => known.partOfRef.has(ref));
  });
  const at = header.findIndex(({ words }) =>
    /^\W*(?:values?|resistance|capacitance|inductance|wert|valeur|valor)\b/i.test(words),
  );
  const cell = cells[at];
  if (named === undefined || cell === undefined || cell === named) return [];
  return parseRefs(named.words.trim()).refs.flatMap((ref) => {
    const kind = valueKind(ref);
    const quantity = kind === null ? null : parseValue(cell.words, { kind });
    return quantity === null || quantity.kind !== kind
      ? []
      : mentionsOf([ref], { value: quantity, marked: null }, cell.place, known);
  });
}
