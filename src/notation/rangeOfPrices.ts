import type { PricedRow } from './sumPrices.ts';

/** What fitted parts cost, as low and as high as their prices can be read; of one currency. */
export interface PriceRange {
  readonly least: number;
  readonly most: number;
  /** ISO 4217; null where the list does not tell. */
  readonly currency: string | null;
  /** Fitted rows that are included, and all fitted rows. */
  readonly priced: number;
  readonly rows: number;
}

/** Things that come one by one: a price is for one of them (common practice). */
const counted = new Set(['pcs', 'set', 'lot', 'kit', 'pair']);
/** Things that hold others: what `pack of 25` beside a price says may be told of the one that is counted. */
const containers = new Set(['roll', 'reel', 'pack', 'bag', 'box', 'sheet', 'strip', 'spool', 'tube', 'bottle']);
/** What lengths, weights and volumes are sold by, as a share of it (SI Brochure; the foot has twelve inches). */
const soldBy: ReadonlyMap<string, number> = new Map([
  ['m', 1],
  ['cm', 0.01],
  ['mm', 0.001],
  ['ft', 1],
  ['in', 1 / 12],
  ['kg', 1],
  ['g', 0.001],
  ['l', 1],
  ['ml', 0.001],
]);

/**
 * The sum of a list as a range. A length with a price is open: `60 cm` at 1.20 may be the price of the piece or of the
 * metre. Null where no row has a price, or where rows have different currencies.
 */
export function rangeOfPrices(parts: readonly PricedRow[]): PriceRange | null {
  const fitted = parts.filter((part) => part.fitted);
  let [least, most, priced] = [0, 0, 0];
  const currencies = new Set<string | null>();
  for (const part of fitted) {
    const costs = costsOf(part);
    if (costs.length === 0) continue;
    least += Math.min(...costs);
    most += Math.max(...costs);
    priced++;
    currencies.add(part.price?.currency ?? null);
  }
  const [currency = null] = currencies;
  return currencies.size === 1 ? { least, most, currency, priced, rows: fitted.length } : null;
}

/** What a row can cost, one number for each reading; none where it cannot be told. */
export function costsOf({ price, amounts }: PricedRow): number[] {
  const [amount] = amounts;
  if (price === null || amount === undefined || amounts.length > 1 || price.per <= 0) return [];
  const one = price.amount / price.per;
  if (counted.has(amount.unit)) return [one * amount.n];
  if (containers.has(amount.unit)) return [one * amount.n, price.amount * amount.n];
  const size = soldBy.get(amount.unit);
  return size === undefined ? [] : [one, one * amount.n * size];
}
