import type { Build } from '#core/build.ts';
import { remember } from '#core/remember.ts';
import type { TermMention } from '#core/term.ts';
import { type SpokenText, spokenTexts } from '../mentions/spokenTexts.ts';
import { placeInside } from '../placeInside.ts';
import { isExplainedAt } from './isExplainedAt.ts';
import { ownTerms } from './ownTerms.ts';
import { fieldsKnown, openingWords } from './skillsAsked.ts';
import table from './terms.json';

interface Term {
  readonly term: string;
  readonly field: string;
  readonly meaning: string;
  readonly names?: readonly string[];
  readonly before?: readonly string[];
  readonly after?: readonly string[];
}

/** Words of the trade in the guide's text, in reading order; first those that a builder has from the start. */
export function findTerms(build: Build): TermMention[] {
  const texts = spokenTexts(build);
  const known = fieldsKnown(build, texts);
  const skills = openingWords(build, texts).map(({ words }) => words.toLowerCase());
  const own = ownTerms(build);
  const said = texts.flatMap((spoken) => termsIn(spoken));
  const beforehand = said.filter(
    ({ told, term }, at) =>
      told === 'used' &&
      said.findIndex((one) => one.term === term) === at &&
      (known.has(fieldOf.get(term) ?? '') || skills.some((words) => words.includes(term.toLowerCase()))),
  );
  const settled = new Set([...own, ...beforehand].map(({ term }) => term.toLowerCase()));
  return [
    ...own,
    ...beforehand.map((mention) => ({ ...mention, told: 'beforehand' as const })),
    ...said.filter(({ term }) => !settled.has(term.toLowerCase())),
  ];
}

/** The terms of one stretch of prose. Of names that overlap, the longest counts. */
export function termsIn({ words, place, step }: SpokenText): TermMention[] {
  return namesIn(words).map(({ term: { term, meaning }, start, end }) => {
    const told = isExplainedAt(words, place.quote, start, end) ? 'explained' : 'used';
    return { term, meaning, told, step, place: placeInside(place, start, end) };
  });
}

const namesIn = remember((words) => {
  const found: { readonly term: Term; readonly start: number; readonly end: number }[] = [];
  for (const { 0: written, index: start } of words.matchAll(anyName)) {
    const term = termNamed(written);
    if (start < (found.at(-1)?.end ?? 0) || term === null || !standsRightly(term, words, start, written)) continue;
    found.push({ term, start, end: start + written.length });
  }
  return found;
});

const terms: readonly Term[] = table.terms;
const fieldOf = new Map(terms.map(({ term, field }) => [term, field]));
const byName = new Map(terms.flatMap((term) => [term.term, ...(term.names ?? [])].map((name) => [keyOf(name), term])));

/** Abbreviations are told by their capitals ('DIP', not 'dip'); words by their letters. */
function keyOf(name: string): string {
  return isAbbreviation(name) ? name : name.toLowerCase();
}

function isAbbreviation(name: string): boolean {
  return /^[A-Z0-9²-]{2,}s?$/.test(name) && /[A-Z]/.test(name);
}

const anyName = new RegExp(
  `(?<![\\p{L}\\p{N}_./-])(?:${[...byName.keys()]
    .sort((a, b) => b.length - a.length)
    .map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
    .join('|')})(?![\\p{L}\\p{N}_/-]|\\.\\p{L})`,
  'giu',
);

function termNamed(written: string): Term | null {
  return byName.get(written) ?? byName.get(written.toLowerCase()) ?? null;
}

/** A word with other meanings counts only beside one that settles which; so it does by its longer names. */
function standsRightly(term: Term, words: string, at: number, written: string): boolean {
  if (keyOf(written) !== keyOf(term.term) || isAbbreviation(term.term)) return true;
  const before = /([\p{L}\p{N}]+)\s+$/u.exec(words.slice(0, at))?.[1]?.toLowerCase() ?? '';
  const after = /^\s+([\p{L}\p{N}]+)/u.exec(words.slice(at + written.length))?.[1]?.toLowerCase() ?? '';
  const fits = (list: readonly string[] | undefined, word: string) =>
    list === undefined || list.some((one) => one.toLowerCase() === word);
  return fits(term.before, before) && fits(term.after, after);
}
