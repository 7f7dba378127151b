import { remember } from '#core/remember.ts';
import trade from './tradeWords.json';
import { isSize, type Word, wordsOf } from './words.ts';

/** A thing of a list with what it is called there. */
export interface Called {
  /** The name; words after a comma, a dash or 'with' say less than those before. */
  readonly name: string;
  /** What else belongs to it for certain: type number, value, body. */
  readonly more: readonly string[];
  /** What such a thing is called by its reference or its kind. */
  readonly kind: readonly string[];
  /** How many the list has; null where it does not say. */
  readonly count: number | null;
}

/** How much a word of a name tells, before it is weighed by how many names hold it. */
export type WordRole = 'type' | 'head' | 'main' | 'size' | 'aside' | 'tail' | 'plain' | 'kind';

/** A name, ready to be compared with words of prose. */
export interface KnownName<T> {
  readonly thing: T;
  readonly count: number | null;
  readonly roles: ReadonlyMap<string, WordRole>;
  /** Words that name the thing by themselves: the last noun of each stretch of the name. */
  readonly heads: ReadonlySet<string>;
  readonly sizes: ReadonlySet<string>;
}

/** All names of a list, by the words in them. */
export interface KnownNames<T> {
  readonly byWord: ReadonlyMap<string, readonly KnownName<T>[]>;
  /** Words written as one that some name writes as two, such as 'keycap'. */
  readonly splits: ReadonlyMap<string, readonly [string, string]>;
  /** Type numbers by their signs in order, so that two swapped letters do not hide one. */
  readonly types: ReadonlyMap<string, string>;
}

/** The letters of a type number in the order of the alphabet, then its digits as they are. */
export function shuffled(type: string): string {
  const letters = type.replace(/\d/g, '');
  return letters.length < 3 || letters.length === type.length
    ? ''
    : [...letters].sort().join('') + type.replace(/\D/g, '');
}

const plain = new Set(trade.plain);
const tails = new Set(trade.tails);
const kindOf = new Map<string, string[]>();
for (const [kind, words] of Object.entries(trade.kindOf)) {
  for (const word of words) kindOf.set(word, [...(kindOf.get(word) ?? []), kind]);
}

/** Prepares the names of a list once, so that each text only looks up its own words. */
export function knownNames<T>(things: readonly T[], called: (thing: T) => Called): KnownNames<T> {
  const byWord = new Map<string, KnownName<T>[]>();
  const splits = new Map<string, readonly [string, string]>();
  for (const thing of things) {
    const name = nameOf(thing, called(thing), splits);
    for (const word of name.roles.keys()) {
      const sharing = byWord.get(word);
      if (sharing === undefined) byWord.set(word, [name]);
      else sharing.push(name);
    }
  }
  for (const word of byWord.keys()) splits.delete(word);
  const types = new Map<string, string>();
  for (const [word, sharing] of byWord) {
    const key = shuffled(word);
    if (key !== '' && sharing.some(({ roles }) => roles.get(word) === 'type')) types.set(key, word);
  }
  return { byWord, splits, types };
}

function nameOf<T>(thing: T, { name, more, kind, count }: Called, splits: Map<string, readonly [string, string]>) {
  const roles = new Map<string, WordRole>();
  const heads = new Set<string>();
  const add = (word: string, role: WordRole) => {
    if (rank[role] > rank[roles.get(word) ?? 'none']) roles.set(word, role);
  };
  for (const [index, { words, isTail }] of stretchesOf(name).entries()) {
    const head = isTail ? undefined : words.findLast((word) => mayBeHead(word));
    for (const [at, word] of words.entries()) {
      const role = roleOf(word, word === head, isTail, index === 0);
      add(word.form, role);
      const base = /^([a-z]{2,}\d+)[a-z]\d*$/.exec(word.form)?.[1];
      if (word.isName && base !== undefined) add(base, role);
      const next = words[at + 1];
      if (next !== undefined && word.to + 1 >= next.from && !isSize(word.form)) {
        splits.set(word.form + next.form, [word.form, next.form]);
      }
      for (const other of kindOf.get(word.form) ?? kindOf.get(base ?? '') ?? []) {
        if (!isTail) add(other, 'kind');
      }
    }
    if (head !== undefined) heads.add(head.form);
  }
  for (const text of more) {
    for (const word of wordsOf(text)) add(word.form, isSize(word.form) ? 'size' : word.isName ? 'type' : 'aside');
  }
  for (const word of kind) {
    add(word, 'kind');
    heads.add(word);
  }
  const sizes = new Set([...roles.keys()].filter(isSize));
  return { thing, count, roles, heads, sizes };
}

const rank: Readonly<Record<WordRole | 'none', number>> = {
  none: -1,
  plain: 0,
  tail: 1,
  kind: 2,
  aside: 3,
  size: 4,
  main: 5,
  head: 6,
  type: 7,
};

function roleOf(word: Word, isHead: boolean, isTail: boolean, isFirst: boolean): WordRole {
  if (isSize(word.form)) return 'size';
  if (isTail) return 'tail';
  if (plain.has(word.form)) return 'plain';
  if (word.isName && /\d/.test(word.form)) return 'type';
  if (isHead) return isFirst ? 'head' : 'aside';
  return isFirst ? 'main' : 'aside';
}

function mayBeHead({ form }: Word): boolean {
  return !isSize(form) && !plain.has(form) && form.length > 1;
}

interface Stretch {
  readonly words: readonly Word[];
  readonly isTail: boolean;
}

/** A name cut where its parts tell different things. */
const stretchesOf = remember((name): readonly Stretch[] => {
  const stretches: Stretch[] = [];
  for (const piece of name.split(/[,;:()[\]/|]|\s[-–—+&]\s/u)) {
    const words = wordsOf(piece);
    const at = words.findIndex(({ form }) => tails.has(form));
    if (at < 0) stretches.push({ words, isTail: false });
    else stretches.push({ words: words.slice(0, at), isTail: false }, { words: words.slice(at + 1), isTail: true });
  }
  return stretches.filter(({ words }) => words.length > 0);
});
