import type { Ref } from '#core/part.ts';
import type { Amount } from '#core/quantity.ts';
import { parseAmount } from '#notation/amount.ts';
import { parseItem } from '#notation/items.ts';
import { parseRefs, refClass } from '#notation/refs.ts';
import { plainBullet } from './plainBullet.ts';

/** What one item of a list names. */
export interface Bullet {
  readonly name: string;
  readonly refs: readonly Ref[];
  /** Null where the item does not say how many, or says so in two readings. */
  readonly amount: Amount | null;
  /** The words that state the amount, as written; empty where none do. */
  readonly amountText: string;
  /** Why the amount is not known, for messages. */
  readonly lacking: string;
  readonly optional: boolean;
  readonly note: string | null;
  readonly link: string | null;
}

/** Reads an item of a list of tools, or of one part; null where it names nothing. */
export function readBullet(written: string): Bullet | null {
  const { strong, text, link } = plainBullet(written);
  const [first] = strong;
  const parted =
    first !== undefined && text.startsWith(first) ? { name: first, rest: text.slice(first.length) } : clause(text);
  return bulletOf(parted.name, parted.rest, link);
}

/** Reads an item that may name several parts in bold: '**2 top plates**, **2 bottom plates**'. */
export function readBullets(written: string): Bullet[] {
  const { strong, text, link } = plainBullet(written);
  const named = strong.filter((name) => leadingAmount(name) !== null);
  const startsBold = named[0] !== undefined && text.startsWith(named[0]);
  if (named.length < 2 || !startsBold) {
    const one = readBullet(written);
    return one === null ? [] : [one];
  }
  const last = named.at(-1) ?? '';
  const rest = text.slice(text.lastIndexOf(last) + last.length);
  return named.flatMap((name) => bulletOf(name, rest, link) ?? []);
}

function bulletOf(named: string, rest: string, link: string | null): Bullet | null {
  const { name: outside, note: inside } = bracketsApart(named);
  const leading = leadingAmount(outside);
  const item = parseItem(leading?.rest ?? outside);
  const bracketRefs = inside.flatMap((note) => refsIn(note));
  const { refs, name } = refsApart(item.name, item.refs);
  if (!/[\p{L}\p{N}]/u.test(name) && refs.length === 0) return null;
  const notes = [...inside.filter((note) => refsIn(note).length === 0), tidied(rest)].filter((note) => note !== '');
  const all = [...refs, ...bracketRefs];
  const stated = leading?.amount ?? (item.name === (leading?.rest ?? outside) ? null : item.amount);
  // 'H1 (the ring)': what stands in brackets after a reference alone is its name.
  const isBare = name === '' || (all.length === 1 && name.toUpperCase() === all[0]);
  return {
    name: isBare ? (notes.shift() ?? all.join(', ')) : name,
    refs: all,
    amount: stated,
    amountText: leading?.text ?? '',
    lacking: leading?.lacking ?? 'a quantity',
    optional: /\boptional(?:ly)?\b|\bnice to have\b/i.test(
      `${named.replace(/\(and optional[^)]*\)/i, '')} ${firstSentence(rest)}`,
    ),
    note: notes.length === 0 ? null : notes.join('; '),
    link,
  };
}

interface LeadingAmount {
  readonly amount: Amount | null;
  readonly text: string;
  readonly rest: string;
  readonly lacking?: string;
}

const numberWords: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
};

/** '58 diodes', '10 (+4) spacers', '8 - 10 feet', '30 cm of wire', 'two screws', 'a knob for each encoder'. */
function leadingAmount(text: string): LeadingAmount | null {
  const size = /^(\d{1,3}) ?[x×] ?(\d{1,3})\b(?! ?[x×])/i.exec(text);
  if (size !== null) {
    return {
      amount: null,
      text: size[0],
      rest: text,
      lacking: `how many; '${size[0]}' can be a size or a number of pieces`,
    };
  }
  const word = /^(\p{L}+) (?=\S)/u.exec(text);
  const n = word === null ? undefined : new Map(Object.entries(numberWords)).get((word[1] ?? '').toLowerCase());
  if (word !== null && n !== undefined) {
    return {
      amount: { n, unit: 'pcs', approximate: /\bfor each\b|\bper\b/i.test(text) },
      text: (word[1] ?? '').trim(),
      rest: text.slice(word[0].length),
    };
  }
  const number =
    /^(?:~ ?|about |approx\. ?|ca\. ?)?\d[\d.,]*(?: ?(?:-|–|to) ?\d+)?\+?(?: ?[x×](?= ))?(?: ?\(\+ ?\d+\))?/i.exec(
      text,
    );
  if (number === null) return null;
  return withUnit(text, number[0]) ?? counted(text, number[0]);
}

/** The number with the unit after it, where that word is one: '30 cm', '2 m of', '1 set of'. */
function withUnit(text: string, number: string): LeadingAmount | null {
  const unit = /^ ?(\p{L}+\.?)(?: of)?(?= |$)/u.exec(text.slice(number.length));
  const amount = unit === null || isSize(unit) ? null : parseAmount(`${number} ${unit[1] ?? ''}`);
  const rest = unit === null ? '' : text.slice(number.length + unit[0].length).trim();
  return amount === null || (amount.unit === 'pcs' && !/^(?:pcs?|pieces?|x)\.?$/i.test(unit?.[1] ?? '')) || rest === ''
    ? null
    : { amount, text: `${number}${unit?.[0].replace(/ of$/, '') ?? ''}`, rest };
}

/** '5 mm LED' is a size, '5 mm of tube' an amount. */
function isSize([words, unit]: RegExpExecArray): boolean {
  return /^(?:mm|in|inch)$/i.test(unit ?? '') && !words.endsWith(' of');
}

/** A number of pieces: a space and a word follow. '3.3 V regulator' and '5mm LED' begin with a size. */
function counted(text: string, number: string): LeadingAmount | null {
  const rest = text.slice(number.length);
  if (
    !/^ +\S/.test(rest) ||
    /^ *(?:%|°|[ckmµun]?(?:Ω|ohms?|[VAWFHm])\b|mm\b|in\b|inch|pin\b|pole\b|way\b|core\b|bit\b|channel\b|position\b|wire\b)/iu.test(
      rest,
    )
  ) {
    return null;
  }
  const amount = parseAmount(number.trim());
  return amount === null || !Number.isInteger(amount.n) ? null : { amount, text: number.trim(), rest: rest.trim() };
}

/** References before a colon, a dash or a name are apart from it: 'R1, R2: 330 Ω resistor', 'U1 ESP32'. */
function refsApart(name: string, refs: readonly Ref[]): { refs: readonly Ref[]; name: string } {
  const [, run = '', rest = ''] = leadingRefs.exec(name) ?? [];
  const named = /^\s*(?:[:=–—]|-(?=\s))\s*(\S.*)$|^\s+(?=[^(])(\S.*)$/u.exec(rest);
  const leading = named?.[1] === undefined ? refsIn(run) : parseRefs(run).refs;
  return leading.length > 0 && named !== null ? { refs: leading, name: named[1] ?? named[2] ?? '' } : { refs, name };
}

const ref = '[A-Za-z]{1,4}\\d{1,4}';
const leadingRefs = new RegExp(
  `^(${ref}(?:\\s*(?:,|\\+|&|and|-|–|to)\\s*${ref}\\b|[-–]\\d{1,4}\\b)*)(?=[\\s:=–—-])(.+)$`,
  'u',
);

function refsIn(text: string): Ref[] {
  const { refs, problem } = parseRefs(text);
  return problem === null && refs.every((ref) => refClass(ref) !== null) ? refs : [];
}

/** Brackets are remarks; a number of spares in them belongs to the amount. */
function bracketsApart(text: string): { name: string; note: string[] } {
  const note: string[] = [];
  const name = text.replace(/\s*\((?!\+ ?\d)([^()]*)\)/g, (_, inside: string) => {
    note.push(inside.trim());
    return '';
  });
  return { name: name.trim().replace(/[.:;,]+$/, ''), note };
}

/** The first clause of an item without bold words, and what follows it. */
function clause(text: string): { name: string; rest: string } {
  const end = /(?<=[\p{L}\p{N})%Ω"])(?:\.(?=\s|$)|;\s|(?<!^~?\d+)\s[–—-]\s)/u.exec(
    text.replace(/^[A-Za-z]{1,4}\d{1,4}[\s\S]{0,3}/, (lead) => '_'.repeat(lead.length)),
  );
  return end === null ? { name: text, rest: '' } : { name: text.slice(0, end.index), rest: text.slice(end.index) };
}

function firstSentence(text: string): string {
  return /^[\s.,;:–—-]*[^.;]*/u.exec(text)?.[0] ?? '';
}

function tidied(text: string): string {
  return text.replace(/^[\s.,;:–—-]+/u, '').trim();
}
