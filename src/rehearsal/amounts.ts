import type { Part } from '#core/part.ts';
import type { Amount } from '#core/quantity.ts';

/** Metres in one of a unit of length (the inch is 25.4 mm by ISO 31-1; the foot is twelve of them). */
const metres: Readonly<Record<string, number>> = { mm: 0.001, cm: 0.01, m: 1, in: 0.0254, ft: 0.3048 };

/** How much of a part the list holds; `exact` is false where list or column leave it open. Null where it tells nothing. */
export interface Stock {
  readonly n: number;
  readonly unit: string;
  readonly exact: boolean;
}

/** What the list says there is of a part. Where its columns disagree, the larger amount, not exact. */
export function stockOf(part: Part): Stock | null {
  const { amount } = part;
  if (amount.is === 'unknown') {
    return part.refs.length === 0 ? null : { n: part.refs.length, unit: 'pcs', exact: true };
  }
  const most = amount.claims.map(({ value }) => value).reduce((a, b) => (b.n > a.n ? b : a));
  // Lists that price a part by its share of a spool or a pack count 0.2 pieces; that tells nothing of how many there are.
  const isShare = most.unit === 'pcs' && !Number.isInteger(most.n);
  return { n: most.n, unit: most.unit, exact: amount.is === 'confirmed' && !most.approximate && !isShare };
}

/** The unit that a part is listed in; `pcs` where the list does not tell. */
export function unitOfPart(part: Part | undefined): string {
  return part === undefined || part.amount.is === 'unknown' ? 'pcs' : part.amount.claims[0].value.unit;
}

/** An amount counted in another unit; null where the two cannot be compared, such as pieces and centimetres. */
export function inUnit(amount: Amount, unit: string): number | null {
  if (amount.unit === unit) return amount.n;
  const from = metres[amount.unit];
  const to = metres[unit];
  return from === undefined || to === undefined ? null : round((amount.n * from) / to);
}

/** Takes the noise of binary fractions off sums of measured lengths. */
export function round(n: number): number {
  return Math.round(n * 1e6) / 1e6;
}
