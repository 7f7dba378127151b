import { remember, rememberFor } from '#core/remember.ts';
import { type KnownName, type KnownNames, shuffled, type WordRole } from './knownNames.ts';
import trade from './tradeWords.json';
import { isSize, type Word, wordsOf } from './words.ts';

/** A thing of a list that words of a sentence seem to name; from `from` to `to` of the sentence. */
export interface Named<T> {
  readonly thing: T;
  /** From 0 to 1: how surely these words mean this thing and no other. */
  readonly fit: number;
  /** How many of it the words speak of; null where they do not say. */
  readonly count: number | null;
  readonly from: number;
  readonly to: number;
  /** What the fit rests on, as the end of a sentence that begins with the words. */
  readonly because: string;
}

const small = new Set(trade.small);
const leading = new Set(trade.leading);
const vague = new Set(trade.vague);
const unless: ReadonlyMap<string, readonly string[]> = new Map(Object.entries(trade.unless));
const numbers: ReadonlyMap<string, number> = new Map(
  ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'].map(
    (word, index) => [word, index + 1] as const,
  ),
);

/** What the words of a sentence name, out of a list. `isWork` says which words are verbs of the work. */
export function findNamed<T>(
  sentence: string,
  names: KnownNames<T>,
  isWork: (from: number, to: number) => boolean,
): readonly Named<T>[] {
  const words = wordsOf(sentence);
  const work = words.flatMap(({ from, to }) => (isWork(from, to) ? [from] : []));
  // The same words with the same verbs of work among them name the same things.
  return namedBy(names)(`${work.join(' ')}\n${sentence}`) as readonly Named<T>[];
}

const namedBy = rememberFor((names: KnownNames<unknown>) =>
  remember((asked): readonly Named<unknown>[] => {
    const at = asked.indexOf('\n');
    const sentence = asked.slice(at + 1);
    const work = new Set(asked.slice(0, at).split(' ').map(Number));
    const words = split(wordsOf(sentence), names);
    return runsOf(words, sentence, names, (from) => at > 0 && work.has(from)).flatMap(
      (run) => nameIn(run, words, sentence, names) ?? [],
    );
  }),
);

/** Words that a name of the list writes as two become two, at the same place. */
function split<T>(words: readonly Word[], { splits, types }: KnownNames<T>): Word[] {
  return words.flatMap((word) => {
    const type = word.isName ? types.get(shuffled(word.form)) : undefined;
    if (type !== undefined && type !== word.form) return [{ ...word, also: [type, ...word.also] }];
    const two = splits.get(word.form);
    return two === undefined ? [word] : two.map((form) => ({ ...word, form, also: [] }));
  });
}

interface Run {
  readonly start: number;
  readonly end: number;
}

/** Neighbouring words that some name holds, without anything between them. */
function runsOf<T>(
  words: readonly Word[],
  sentence: string,
  names: KnownNames<T>,
  isWork: (from: number, to: number) => boolean,
): Run[] {
  const runs: Run[] = [];
  let start = -1;
  const isKnown = words.map(
    (word, at) =>
      !small.has(word.form) &&
      (names.byWord.has(word.form) || word.also.some((form) => names.byWord.has(form))) &&
      !isWork(word.from, word.to) &&
      !isVerb(words, at, sentence),
  );
  for (let at = 0; at <= words.length; at++) {
    const word = words[at];
    const before = words[at - 1];
    const goesOn =
      start >= 0 &&
      isKnown[at] === true &&
      word !== undefined &&
      before !== undefined &&
      /^[\s\-‐×x"”“'’*]*$/u.test(sentence.slice(before.to, word.from));
    if (start >= 0 && !goesOn) {
      runs.push({ start, end: at });
      start = -1;
    }
    if (start < 0 && isKnown[at] === true) start = at;
  }
  return runs;
}

/** A word at the start of a clause with 'the' or 'it' right after it is what one does, not a thing. */
function isVerb(words: readonly Word[], at: number, sentence: string): boolean {
  const word = words[at];
  const next = words[at + 1];
  if (word === undefined || next === undefined || word.isName || isSize(word.form)) return false;
  if (!leading.has(next.form) || !/^\s+$/u.test(sentence.slice(word.to, next.from))) return false;
  return /(?:^|[,:;.(–—]|\b(?:and|then|to|now|you|will|please|can|not|or|first|don['’]t|carefully|gently))\s*$/iu.test(
    sentence.slice(0, word.from),
  );
}

interface Rated<T> {
  readonly name: KnownName<T>;
  readonly score: number;
  readonly matched: readonly string[];
  readonly bySynonym: boolean;
}

const weights: Readonly<Record<WordRole, number>> = {
  type: 1.3,
  head: 1,
  main: 0.9,
  size: 0.7,
  aside: 0.5,
  kind: 0.35,
  plain: 0.25,
  tail: 0.12,
};

/** The thing that a run of words names, if one fits better than all others. */
function nameIn<T>({ start, end }: Run, words: readonly Word[], sentence: string, names: KnownNames<T>) {
  const run = words.slice(start, end);
  const last = run.at(-1);
  const first = run[0];
  if (last === undefined || first === undefined || isOtherwise(last, words, end)) return null;
  const count = countBefore(words, start) ?? (last.isPlural ? null : undefined);
  const rated = rate(run, names).sort((a, b) => b.score - a.score);
  const best = choose(rated, count ?? null);
  if (best === null) return null;
  const fit = fitOf(best, run, names, tailAfter(words, end, sentence));
  const said = sentence.slice(first.from, last.to);
  return {
    thing: best.name.thing,
    fit,
    count: count === undefined ? 1 : count,
    from: first.from,
    to: last.to,
    because: reason(best, names, said),
  };
}

function rate<T>(run: readonly Word[], names: KnownNames<T>): Rated<T>[] {
  const sharing = run.flatMap(({ form, also }) => [form, ...also].map((one) => names.byWord.get(one) ?? []));
  const candidates = new Set(sharing.filter(({ length }) => length <= commonest).flat());
  const sizes = run.filter(({ form }) => isSize(form)).map(({ form }) => form);
  return [...candidates].flatMap((name): Rated<T>[] => {
    if (sizes.some((one) => !name.sizes.has(one) && clashes(one, name.sizes))) return [];
    let score = 0;
    let bySynonym = false;
    const matched: string[] = [];
    for (const word of run) {
      const form = [word.form, ...word.also].find((one) => name.roles.has(one));
      const role = form === undefined ? undefined : name.roles.get(form);
      if (form === undefined || role === undefined) continue;
      matched.push(form);
      if (form !== word.form || role === 'kind') bySynonym = true;
      score += weights[role] * rarity(form, names) * (form === word.form ? 1 : 0.6);
    }
    const last = run.at(-1);
    const isNamed = last !== undefined && name.heads.has(last.form);
    const isHead = isNamed || (last?.also.some((form) => name.heads.has(form)) ?? false);
    return [{ name, score: score + (isNamed ? 0.5 : isHead ? 0.25 : 0), matched, bySynonym }];
  });
}

/** Sizes of one sort that differ, such as M2.5 and M3, or 10 kΩ and 330 Ω. */
function clashes(size: string, others: ReadonlySet<string>): boolean {
  const sort = sortOf(size);
  return [...others].some((other) => sortOf(other) === sort && sort !== '');
}

function sortOf(size: string): string {
  return /^m\d/.test(size) ? 'm' : size.replace(/^[\d.,]+\s*(?:[kMGmµunp](?=[ΩFHVAW]))?/u, '');
}

function rarity<T>(form: string, { byWord }: KnownNames<T>): number {
  const sharing = byWord.get(form)?.length ?? 1;
  return sharing === 1 ? 1 : sharing === 2 ? 0.7 : sharing === 3 ? 0.5 : 0.35;
}

/** A word that more names share tells none of them from the others. */
const commonest = 20;

/** The best of those that fit; of equals the one whose number is the number said, else none. */
function choose<T>(rated: readonly Rated<T>[], count: number | null): Rated<T> | null {
  const [best, next] = rated;
  if (best === undefined || next === undefined || best.score > next.score * 1.08) return best ?? null;
  const equal = rated.filter(({ score }) => score * 1.08 >= best.score);
  const counted = count === null || count < 2 ? [] : equal.filter(({ name }) => name.count === count);
  return counted.length === 1 ? (counted[0] ?? null) : null;
}

function fitOf<T>(best: Rated<T>, run: readonly Word[], names: KnownNames<T>, tail: boolean): number {
  const { name, matched } = best;
  const roles = matched.map((form) => name.roles.get(form));
  const last = run.at(-1);
  const lastForm = last === undefined ? undefined : [last.form, ...last.also].find((form) => name.roles.has(form));
  const isHead = lastForm !== undefined && name.heads.has(lastForm);
  const telling = matched.filter((form, at) => roles[at] !== 'plain' && roles[at] !== 'tail' && form !== undefined);
  const isOnly = matched.some((form) => names.byWord.get(form)?.length === 1);
  let fit = 0.3;
  if (roles.includes('type') && isOnly) fit = 0.88;
  else if (isHead && telling.length >= 2) fit = 0.88;
  else if (isHead && isOnly && roles.includes('head'))
    fit = lastForm !== undefined && vague.has(lastForm) ? 0.68 : 0.82;
  else if (isHead && matched.length >= 2) fit = 0.72;
  else if (isHead && (name.roles.get(lastForm ?? '') === 'head' || isOnly))
    fit = vague.has(lastForm ?? '') ? 0.55 : 0.66;
  else if (telling.length >= 2) fit = 0.7;
  else if (telling.length === 1 && isOnly)
    fit = roles.includes('main') ? (last?.isName === true ? 0.66 : 0.5) : roles.includes('aside') ? 0.45 : 0.35;
  if (best.bySynonym) fit -= 0.06;
  if (lastForm === undefined) fit -= 0.3;
  if (tail) fit -= 0.25;
  const missed = run.length - matched.length;
  return Math.max(0, fit - 0.1 * missed);
}

/** Whether a further noun follows, so that the words only describe another thing: 'battery compartment'. */
function tailAfter(words: readonly Word[], end: number, sentence: string): boolean {
  const last = words[end - 1];
  const next = words[end];
  if (last === undefined || next === undefined || !/^[ \-‐]+$/u.test(sentence.slice(last.to, next.from))) return false;
  if (last.isPlural || small.has(next.form) || isSize(next.form)) return false;
  return !/(?:ed|ly|ing)$/.test(next.form) && !/^[A-Z]{1,3}\d+$/.test(sentence.slice(next.from, next.to));
}

function isOtherwise(last: Word, words: readonly Word[], end: number): boolean {
  const others = [last.form, ...last.also].flatMap((form) => unless.get(form) ?? []);
  return others.length > 0 && words.slice(Math.max(0, end - 3), end + 4).some(({ form }) => others.includes(form));
}

/** 'four M3 screws', '4 × M3 screw', 'both screws'. */
function countBefore(words: readonly Word[], start: number): number | null {
  for (let at = start - 1; at >= Math.max(0, start - 3); at--) {
    const form = words[at]?.form ?? '';
    if (form === 'both') return 2;
    const n = numbers.get(form) ?? (/^\d{1,3}x?$/.test(form) ? Number.parseInt(form, 10) : undefined);
    if (n !== undefined && n > 0) return n;
    if (form !== 'the' && form !== 'of' && form !== 'x' && form !== 'remaining' && form !== 'other') return null;
  }
  return null;
}

function reason<T>({ name, matched }: Rated<T>, names: KnownNames<T>, said: string): string {
  const only = matched.filter((form) => names.byWord.get(form)?.length === 1);
  if (only.length > 0) return `no other listed name holds “${only.join(' ')}”`;
  return name.heads.has(matched.at(-1) ?? '')
    ? `no other listed name fits “${said}” as well`
    : `these words together fit no other listed name`;
}
