import type { Action } from '#core/action.ts';
import type { Build } from '#core/build.ts';
import { type Basis, firstValue } from '#core/claim.ts';
import type { HazardId } from '#core/hazard.ts';
import type { Part } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { remember, rememberFor } from '#core/remember.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import { placeInside } from '../placeInside.ts';
import type { GuideSentence } from './hearGuide.ts';
import { type LibraryCaution, library } from './library.ts';
import { type Phrases, phrasesOf } from './phrases.ts';
import { within } from './readingPlace.ts';

/** Something in the build that gives a hazard away. */
export interface Sighting {
  readonly place: Place;
  readonly step: StepId | null;
  readonly basis: Basis;
  /** `act`: it is done here. `head`: a step's facts or heading name it. `list`: a list holds it. `mention`: it is spoken of. */
  readonly as: 'act' | 'head' | 'list' | 'mention';
  readonly why: string;
  /** What the step's words call the thing, where a list has it. */
  readonly names?: readonly string[];
}

/** What sightings are looked for in. */
export interface Scene {
  readonly build: Build;
  readonly steps: Readonly<Record<StepId, StepFacts>>;
  readonly actions: readonly Action[];
  readonly sentences: readonly GuideSentence[];
}

/** Everything in lists, facts and words that an entry's triggers fit. */
export function sightingsOf(entry: LibraryCaution, scene: Scene): Sighting[] {
  const unless = unlessOf(entry);
  return [
    ...inParts(entry, scene),
    ...inTools(entry, unless, scene),
    ...inSupply(entry, unless, scene),
    ...inActions(entry, unless, scene),
    ...inSentences(entry, scene),
  ];
}

/** A row of the parts list as one text. */
export const wordsOfPart = rememberFor((part: Part): string => {
  const value = firstValue(part.value)?.text ?? '';
  const ratings = part.ratings.map(({ text }) => text);
  return [part.description, value, ...ratings, part.package ?? '', part.mpn ?? '', part.note ?? ''].join('. ');
});

/** The part in the list, and every step that declares to take it up. */
export function sightingsOfPart(part: Part, { steps }: Scene, why = `the part ‘${part.description}’`): Sighting[] {
  const names = part.refs;
  const uses = Object.entries(steps).flatMap(([step, facts]) =>
    facts.uses
      .filter(({ value }) => value.part === part.id)
      .flatMap(({ basis, places }): Sighting[] => {
        const place = places[0];
        return place === undefined ? [] : [{ place, step, basis, as: 'head', why, names }];
      }),
  );
  return [{ place: part.place, step: null, basis: 'declared', as: 'list', why, names }, ...uses];
}

function inParts(entry: LibraryCaution, scene: Scene): Sighting[] {
  if (entry.triggers.parts === undefined) return [];
  return partsMeant(entry)(scene.build.parts).flatMap((part) => sightingsOfPart(part, scene));
}

/** Listed parts that an entry's triggers fit. */
const partsMeant = rememberFor((entry: LibraryCaution) => {
  const unless = unlessOf(entry);
  const phrases = phrasesOf(entry.triggers.parts ?? []);
  const otherThings = phrasesOf(entry.triggers.otherThings ?? []);
  return rememberFor((parts: readonly Part[]) =>
    parts
      .filter((part) => part.fitted && otherThings.find(headOf(part)) === null)
      .filter((part) => isMeant(wordsOfPart(part), phrases, unless) !== null),
  );
});

function inTools({ triggers }: LibraryCaution, unless: Unless, { build, steps }: Scene): Sighting[] {
  if (triggers.tools === undefined) return [];
  const phrases = phrasesOf(triggers.tools);
  const listed = build.tools
    .filter(({ name, note, needed }) => needed && isMeant(`${name}. ${note ?? ''}`, phrases, unless) !== null)
    .map(
      ({ name, place }): Sighting => ({ place, step: null, basis: 'declared', as: 'list', why: `the tool ‘${name}’` }),
    );
  // Many steps name the same few tools.
  const named = new Set(Object.values(steps).flatMap(({ tools }) => tools.map(({ value }) => value)));
  const meant = new Set([...named].filter((tool) => isMeant(tool, phrases, unless) !== null));
  if (meant.size === 0) return listed;
  const declared = Object.entries(steps).flatMap(([step, { tools }]) =>
    tools.flatMap(({ value, basis, places }): Sighting[] => {
      const place = places[0];
      if (place === undefined || !meant.has(value)) return [];
      return [{ place, step, basis, as: 'head', why: `the tool ‘${value}’` }];
    }),
  );
  return [...listed, ...declared];
}

function inSupply({ triggers }: LibraryCaution, unless: Unless, { build: { settings } }: Scene): Sighting[] {
  const place = settings.places.supply;
  if (settings.supply === null || place === undefined) return [];
  if (isMeant(settings.supply, phrasesOf(triggers.supply ?? []), unless) === null) return [];
  return [{ place, step: null, basis: 'declared', as: 'list', why: `the supply ‘${settings.supply}’` }];
}

function inActions({ triggers }: LibraryCaution, unless: Unless, scene: Scene): Sighting[] {
  const { actions, sentences } = scene;
  const sentenceOf = sentencesOfActions(scene);
  const kinds = new Set(triggers.actions ?? []);
  const objects = triggers.objects === undefined ? null : phrasesOf(triggers.objects);
  return actions.flatMap(({ kind, told, verb, place, step }): Sighting[] => {
    if (!kinds.has(kind) || told === 'not') return [];
    const index = sentenceOf.get(place) ?? -1;
    const sentence = sentences[index];
    // What stands in a caution is no work.
    if (sentence === undefined || unless.anywhere.find(sentence.words) !== null) return [];
    const next = sentences[index + 1];
    const before = sentences[index - 1];
    const near = [
      before?.step === step && /\b(?:them|it|these|those)\b/i.test(sentence.words) ? before.words : '',
      sentence.words,
      next?.step === step ? next.words : '',
    ];
    if (objects !== null && objects.find(near.join(' ')) === null) return [];
    const as = told !== 'do' ? 'mention' : sentence.isHeading ? 'head' : 'act';
    return [{ place, step, basis: 'read', as, why: `the word ‘${verb.toLowerCase()}’` }];
  });
}

/** The sentence, by its number, in which each piece of work is told, by the place of its words. */
const sentencesOfActions = rememberFor(({ actions, sentences }: Scene): ReadonlyMap<Place, number> => {
  const byFile = new Map<string, number[]>();
  for (const [index, { place }] of sentences.entries()) {
    const known = byFile.get(place.file);
    if (known === undefined) byFile.set(place.file, [index]);
    else known.push(index);
  }
  return new Map(
    actions.flatMap(({ place }): [Place, number][] => {
      const index = byFile.get(place.file)?.find((one) => {
        const sentence = sentences[one];
        return sentence !== undefined && within(sentence.place, place);
      });
      return index === undefined ? [] : [[place, index]];
    }),
  );
});

function inSentences(entry: LibraryCaution, scene: Scene): Sighting[] {
  return (sentencesMeant(scene).get(entry.id) ?? []).flatMap(({ sentence, found }): Sighting[] => {
    const { words, place, step, isHeading } = sentence;
    const as = isHeading ? 'head' : 'act';
    const here = words.slice(found.start, found.end);
    const why = `the ${/\s/.test(here) ? 'words' : 'word'} ‘${here}’`;
    return [{ place: placeInside(place, found.start, found.end), step, basis: 'read', as, why }];
  });
}

interface MeantHere {
  readonly sentence: GuideSentence;
  readonly found: { readonly start: number; readonly end: number };
}

/** Sentences that speak of what gives a hazard away, by the hazard. */
const sentencesMeant = rememberFor(({ sentences }: Scene): ReadonlyMap<HazardId, readonly MeantHere[]> => {
  const meant = new Map<HazardId, MeantHere[]>();
  for (const sentence of sentences) {
    for (const { id, found } of hazardsMeant(sentence.words)) {
      const known = meant.get(id);
      if (known === undefined) meant.set(id, [{ sentence, found }]);
      else known.push({ sentence, found });
    }
  }
  return meant;
});

const hazardsMeant = remember((words) =>
  library.flatMap((entry) => {
    const { text } = entry.triggers;
    const found = text === undefined ? null : isMeant(words, phrasesOf(text), unlessOf(entry));
    return found === null ? [] : [{ id: entry.id, found }];
  }),
);

/** What a listed thing is, ahead of what comes with it. */
function headOf({ description }: Part): string {
  return description.split(/[,;(]|\bwith\b/iu)[0] ?? '';
}

interface Unless {
  readonly anywhere: Phrases;
  readonly beside: Phrases;
}

function unlessOf({ triggers }: LibraryCaution): Unless {
  return { anywhere: phrasesOf(triggers.unless ?? []), beside: phrasesOf(triggers.unlessBeside ?? []) };
}

/** The clause in which a phrase stands, with a single word that follows it: '18650 cell, optional'. */
function clauseAround(words: string, { start, end }: { start: number; end: number }): string {
  const before = words.slice(0, start).split(clauseEnd).at(-1) ?? '';
  const [after = '', next = ''] = words.slice(end).split(clauseEnd);
  const isOneWord = /^[^\s]+$/u.test(next.trim());
  return `${before}${words.slice(start, end)}${after}${isOneWord ? ` ${next}` : ''}`;
}

const clauseEnd = /[,;()]|\.\s|\b(?:and|with|but|while)\b/iu;

/** Where words name a thing that is really there: not denied, and not made harmless by other words. */
function isMeant(words: string, phrases: Phrases, unless: Unless): { start: number; end: number } | null {
  const found = phrases.find(words);
  if (found === null || unless.anywhere.find(words) !== null) return null;
  if (unless.beside.find(clauseAround(words, found)) !== null) return null;
  if (deniedBefore.test(words.slice(0, found.start)) || deniedAfter.test(words.slice(found.end))) return null;
  return found;
}

const deniedBefore =
  /\b(?:no|not|never|without|avoid|instead of|rather than|don['’]t|do not|isn['’]t|aren['’]t|neither|nor|needn['’]t|free of)\b(?:\s+[\p{L}-]+){0,4}\s*$/iu;
const deniedAfter =
  /^(?:[\s-]*(?:free|less)\b|[^.,;]{0,30}\b(?:is|are)\s+not\s+(?:needed|required|used|included|necessary)\b|[^.;]{0,20}\bnot (?:needed|required|necessary|included|used)\b)/iu;
