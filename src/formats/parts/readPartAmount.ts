import { type Claim, declared, type Known, unknown } from '#core/claim.ts';
import type { Ref } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import type { Amount } from '#core/quantity.ts';
import { amountUnitOf, parseAmount } from '#notation/amount.ts';

/** A cell of the quantity with where it stands. */
export interface AmountCell {
  readonly text: string;
  readonly place: TextPlace;
}

/** What a row says about how many. */
export interface AmountSources {
  readonly refs: readonly Ref[];
  readonly refsPlace: TextPlace | null;
  /** One cell, or one for each variant of the build. */
  readonly quantity: readonly AmountCell[];
  /** What another column says the quantity is counted in. */
  readonly unit: string | null;
  /** The quantity is what was bought: spares do not contradict the references. */
  readonly isOrdered: boolean;
}

/**
 * How many of a part: by its quantity, by the count of its references, or by both; contradicted where they disagree.
 * `unread` are the cells that hold no amount.
 */
export function readPartAmount(sources: AmountSources): { amount: Known<Amount>; unread: readonly AmountCell[] } {
  const read = sources.quantity.map((cell) => ({ cell, amount: withUnit(parseAmount(cell.text), sources.unit) }));
  const unread = read.filter(({ amount }) => amount === null).map(({ cell }) => cell);
  const stated = summed(read.flatMap(({ cell, amount }) => (amount === null ? [] : [declared(amount, cell.place)])));
  const counted =
    sources.refs.length === 0 || sources.refsPlace === null
      ? null
      : declared<Amount>({ n: sources.refs.length, unit: 'pcs', approximate: false }, sources.refsPlace);
  return { amount: joined(stated, counted, sources.isOrdered), unread };
}

function joined(stated: Claim<Amount> | null, counted: Claim<Amount> | null, isOrdered: boolean): Known<Amount> {
  if (stated === null) return counted === null ? unknown('a quantity') : { is: 'confirmed', claims: [counted] };
  if (counted === null) return { is: 'confirmed', claims: [stated] };
  if (isOrdered) return { is: 'confirmed', claims: [counted] };
  const { n, unit, approximate } = stated.value;
  // A set of four, or none of a part that is left out, says nothing against the references.
  if (unit !== 'pcs' || approximate || n === 0) return { is: 'confirmed', claims: [stated] };
  return { is: n === counted.value.n ? 'confirmed' : 'contradicted', claims: [stated, counted] };
}

function withUnit(amount: Amount | null, unit: string | null): Amount | null {
  if (amount === null || unit === null || amount.unit !== 'pcs') return amount;
  return { ...amount, unit: amountUnitOf(unit) ?? unit };
}

/** The amounts of all variants together; the first alone where they are counted in different units. */
function summed(claims: readonly Claim<Amount>[]): Claim<Amount> | null {
  const [first, ...more] = claims;
  if (first === undefined || more.length === 0 || more.some(({ value }) => value.unit !== first.value.unit))
    return first ?? null;
  return {
    value: {
      n: claims.reduce((sum, { value }) => sum + value.n, 0),
      unit: first.value.unit,
      approximate: claims.some(({ value }) => value.approximate),
    },
    basis: 'derived',
    places: claims.flatMap(({ places }) => places),
    confidence: 1,
  };
}
