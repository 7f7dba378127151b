import { declared } from '#core/claim.ts';
import type { Part, Ref } from '#core/part.ts';
import type { Amount } from '#core/quantity.ts';
import type { PartUse, WrittenFact } from '#core/step.ts';
import { parseAmount } from '#notation/amount.ts';
import { type Item, parseItem } from '#notation/items.ts';
import type { KnownThings } from '../knownThings.ts';
import { type FactItem, itemsOf, type Reading } from './reading.ts';

/** `Parts: R1–R4, W1 30 cm, M3 screw × 4`: the parts that a step takes up, one use for each reference. */
export function readUses(fact: WrittenFact, known: KnownThings): Reading<PartUse> {
  const claims = itemsOf(fact).flatMap((item) => usesOf(item, known).map((use) => declared(use, item.place)));
  return { claims, problems: [] };
}

/** The parts that one item names. */
export function usesOf({ text }: FactItem, known: KnownThings): PartUse[] {
  const item = parseItem(text);
  const refs = item.refs.filter((ref) => known.partOfRef.has(ref));
  if (refs.length === 0) {
    const cutOff = lengthOf(text, known);
    if (cutOff !== null) return [cutOff];
    const part = known.partNamed(item.name) ?? known.partNamed(text);
    if (part !== null || item.refs.length === 0)
      return [{ named: text, part: part?.id ?? null, ref: null, amount: item.amount }];
  }
  return item.refs.map((ref) => {
    const part = known.partOfRef.get(ref);
    return {
      named: item.refs.length === 1 ? text : ref,
      part: part?.id ?? null,
      ref,
      amount: shareOf(item, ref, part),
    };
  });
}

/** 'Hook-up wire 90 cm' of a wire that is listed by length; elsewhere a length at the end is a size. */
function lengthOf(text: string, known: KnownThings): PartUse | null {
  const [, name = '', length = ''] =
    /^(.*\p{L})[\s,]+((?:~ ?)?\d[\d.,]* ?(?:mm|cm|m|in|ft))$/su.exec(text.trim()) ?? [];
  const part = name === '' ? null : known.partNamed(name);
  const amount = part !== null && isLong(part) ? parseAmount(length) : null;
  return part === null || amount === null ? null : { named: text, part: part.id, ref: null, amount };
}

/** The stated amount for a single reference; an equal share of it for several. */
function shareOf(item: Item, ref: Ref, part: Part | undefined): Amount {
  const stated = item.refs.length === 1 && isLong(part) ? lengthAfter(item.name, ref) : null;
  if (stated !== null) return stated;
  const n = item.amount.n / item.refs.length;
  return Number.isInteger(n) || item.refs.length === 1 ? { ...item.amount, n } : { ...item.amount, n: 1 };
}

/** A part that is listed by length, such as wire or tube, is used by length. */
function isLong(part: Part | undefined): boolean {
  return part?.amount.is !== undefined && part.amount.is !== 'unknown' && part.amount.claims[0].value.unit !== 'pcs';
}

function lengthAfter(name: string, ref: Ref): Amount | null {
  const rest = name.toUpperCase().startsWith(ref) ? name.slice(ref.length).replace(/^[\s,]+/, '') : '';
  return rest === '' ? null : parseAmount(rest);
}
