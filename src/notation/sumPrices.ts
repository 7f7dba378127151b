import type { Price } from '#core/part.ts';
import type { Amount, Money } from '#core/quantity.ts';

/** What a row of a parts list says of price and amount. */
export interface PricedRow {
  readonly price: Price | null;
  /** Every amount that is claimed; a sum needs one. */
  readonly amounts: readonly Amount[];
  readonly fitted: boolean;
}

/** What fitted parts cost: one total a currency, and what the totals stand on. */
export interface PriceSum {
  readonly totals: readonly Money[];
  /** Fitted rows that a total includes, and all fitted rows. */
  readonly priced: number;
  readonly rows: number;
  /** Latest ISO 8601 date of a price; null where no price is dated. */
  readonly latest: string | null;
}

// A list that counts in one of these prices by it (common practice). '30 cm' may well be priced by the metre.
const pricedUnits = new Set(['pcs', 'm', 'set', 'lot', 'kit', 'pair']);

/** Sums parts with one amount, a price, and a unit that prices go by; others are left out of the sum. */
export function sumPrices(parts: readonly PricedRow[]): PriceSum {
  const fitted = parts.filter((part) => part.fitted);
  const totals = new Map<string | null, number>();
  const dates: string[] = [];
  let priced = 0;
  for (const { price, amounts } of fitted) {
    const amount = amounts[0];
    if (!price || !amount || amounts.length > 1 || !pricedUnits.has(amount.unit) || price.per <= 0) continue;
    totals.set(price.currency, (totals.get(price.currency) ?? 0) + (price.amount / price.per) * amount.n);
    if (price.date !== null) dates.push(price.date);
    priced++;
  }
  return {
    totals: [...totals].map(([currency, amount]) => ({ amount, currency })),
    priced,
    rows: fitted.length,
    latest: dates.sort().at(-1) ?? null,
  };
}
