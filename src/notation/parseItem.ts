import type { Ref } from '#core/part.ts';
import type { Amount } from '#core/quantity.ts';
import { parseAmount } from './amount.ts';
import { parseRefs } from './parseRefs.ts';
import { refClass } from './refClass.ts';

/**
 * One item of a list of parts. `name` is the item without its amount; `refs` are the references it names, `ref` the
 * one reference where it names exactly one. The amount is as stated, else one piece for each reference, else one.
 */
export interface Item {
  readonly name: string;
  readonly ref: Ref | null;
  readonly refs: Ref[];
  readonly amount: Amount;
}

/** Longer items are prose; they are taken as a name. */
const longest = 300;

/**
 * Reads `R1`, `R1–R4`, `M3 screw × 4`, `4 × M3 screw`, `4x M3 screw`, `W1 30 cm`, `H1 (the ring)`. A reference followed
 * by plain words counts only where its letters stand for a class of parts, so `R1 resistor` names R1 and `M3 screw`
 * nothing. `M3 × 10` and `2 × 20 header` state sizes, not amounts.
 */
export function parseItem(text: string): Item {
  const written = text.trim().slice(0, longest);
  const { name, amount } = amountApart(written);
  const refs = refsNamed(name);
  return {
    name,
    ref: refs.length === 1 ? (refs[0] ?? null) : null,
    refs,
    amount: amount ?? { n: Math.max(1, refs.length), unit: 'pcs', approximate: false },
  };
}

interface Parted {
  readonly name: string;
  readonly amount: Amount | null;
}

function amountApart(text: string): Parted {
  return (
    countBefore(text) ?? countAfter(text) ?? countInBrackets(text) ?? lengthOfWire(text) ?? { name: text, amount: null }
  );
}

function countBefore(text: string): Parted | null {
  const [, n = '', name = ''] = /^(\d{1,5}) ?(?:×(?! ?\d)|[xX] (?!\d)) ?(\S.*)$/su.exec(text) ?? [];
  return parted(name, n);
}

function countAfter(text: string): Parted | null {
  const [, name = '', n = ''] = /^(.*\S)\s*(?:×|\s[xX])\s*(\d{1,5})$/su.exec(text) ?? [];
  const isSize = /\d$/u.test(name) && refsNamed(name).length === 0 && !/\bM\d[\d.]*\s*[×x]\s*\d[\d.]*$/u.test(name);
  return isSize || /^M\d+$/u.test(name) ? null : parted(name, n);
}

function countInBrackets(text: string): Parted | null {
  const [, name = '', stated = ''] = /^(.*\S)\s*\(([^()]{1,20})\)$/su.exec(text) ?? [];
  // A bare number in brackets may be a mark on the drawing.
  return /^\d+$/u.test(stated.trim()) ? null : parted(name, stated);
}

function lengthOfWire(text: string): Parted | null {
  const [, name = '', length = ''] =
    /^([A-Za-z]{1,4}\d{1,5}),? +((?:~ ?)?\d[\d.,]* ?(?:mm|cm|m|in|ft))$/su.exec(text) ?? [];
  return refClass(name) === 'wire' ? parted(name, length) : null;
}

function parted(name: string, stated: string): Parted | null {
  const amount = name === '' ? null : parseAmount(stated);
  return amount === null ? null : { name: name.trim(), amount };
}

function refsNamed(name: string): Ref[] {
  const all = parseRefs(name);
  if (all.problem === null) return all.refs;
  const [, first = '', rest = ''] = /^([A-Za-z]{1,4}\d{1,5})\b(.*)$/su.exec(name) ?? [];
  if (first === '') return [];
  const isApart = /^\s*(?:\(|:\s|[–—-]\s|,)/u.test(rest);
  return isApart || (/^\s/u.test(rest) && refClass(first) !== null) ? [first.toUpperCase()] : [];
}
