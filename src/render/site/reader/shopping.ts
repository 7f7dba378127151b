import { dividedBy, type Exact, exactOf, formatExact, formatShort, plus, roundedUp, times, zero } from './exact.ts';

/** A row of the parts list as a list for shopping needs it. Texts are as the page shows them. */
export interface Wanted {
  /** The row's block. */
  readonly id: string;
  readonly refs: string;
  readonly name: string;
  readonly value: string;
  readonly ratings: string;
  readonly body: string;
  readonly mpn: string;
  readonly supplier: string | null;
  readonly link: string;
  readonly note: string;
  /** For one build; null where the list does not say how many, or contradicts itself. */
  readonly amount: { readonly n: number; readonly unit: string; readonly approximate: boolean } | null;
  /** What stands in place of an amount that is null. */
  readonly open: string;
  readonly spares: number;
  readonly price: {
    readonly amount: number;
    readonly currency: string | null;
    readonly per: number;
    /** True where the price is for a pack of `per` that is not broken. */
    readonly packed: boolean;
    readonly date: string | null;
  } | null;
}

/** What to buy of one row for so many builds. */
export interface ToBuy {
  readonly wanted: Wanted;
  /** With its unit: `6`, `0.8 m`, `about 3`; empty where nobody says how many. */
  readonly amount: string;
  /** Spare pieces on top of the amount. */
  readonly spares: string;
  /** Packs that hold both; empty where it is not sold in packs. */
  readonly packs: string;
  /** Null without a price, or where its unit is none that prices go by. */
  readonly cost: Exact | null;
}

/** One supplier's part of the list. */
export interface Errand {
  /** Null for what no supplier is told of. */
  readonly supplier: string | null;
  readonly rows: readonly ToBuy[];
  readonly sums: Sums;
}

/** What rows cost together: a sum for each currency, of how many rows, by prices of which days. */
export interface Sums {
  /** Ready to be read, such as `12.40 EUR`. */
  readonly sums: readonly string[];
  readonly priced: number;
  readonly rows: number;
  /** ISO 8601, the first and the last; null where no price is dated. */
  readonly dates: readonly [string, string] | null;
}

export interface Shopping {
  readonly errands: readonly Errand[];
  readonly sums: Sums;
}

// A list that counts in one of these prices by it (common practice). '30 cm' may well be priced by the metre.
const pricedUnits = new Set(['pcs', '', 'm', 'set', 'lot', 'kit', 'pair']);

/** How many builds can be asked for. */
export const mostBuilds = 999;

/** The number of builds that a reader has written; null where it is none to buy for. */
export function readBuilds(text: string): number | null {
  const builds = /^\s*\d{1,3}\s*$/u.test(text) ? Number(text) : 0;
  return builds >= 1 && builds <= mostBuilds ? builds : null;
}

/** The list for so many builds without what is owned: by supplier as they first come, what has none at the end. */
export function shoppingFor(wanted: readonly Wanted[], builds: number, owned: ReadonlySet<string>): Shopping {
  const rows = wanted.filter(({ id }) => !owned.has(id)).map((row) => toBuy(row, builds));
  const named = [...new Set(rows.map(({ wanted: { supplier } }) => supplier))];
  const suppliers = [
    ...named.filter((supplier) => supplier !== null),
    ...named.filter((supplier) => supplier === null),
  ];
  return {
    errands: suppliers.map((supplier) => {
      const its = rows.filter((row) => row.wanted.supplier === supplier);
      return { supplier, rows: its, sums: sumsOf(its) };
    }),
    sums: sumsOf(rows),
  };
}

function toBuy(wanted: Wanted, builds: number): ToBuy {
  const { amount, price } = wanted;
  const all = exactOf(builds);
  const spare = times(exactOf(wanted.spares), all);
  const needed = amount === null ? null : times(exactOf(amount.n), all);
  const spares = wanted.spares === 0 ? '' : formatShort(spare);
  const counted = amount !== null && (amount.unit === 'pcs' || amount.unit === '');
  const total = needed === null ? null : counted ? plus(needed, spare) : needed;
  const packs = total !== null && counted && price?.packed ? roundedUp(dividedBy(total, exactOf(price.per))) : null;
  return {
    wanted,
    amount: amount === null || needed === null ? '' : amountText(needed, amount.unit, amount.approximate),
    spares,
    packs: packs === null ? '' : formatShort(packs),
    cost: costOf(wanted, total, packs),
  };
}

function amountText(n: Exact, unit: string, approximate: boolean): string {
  const counted = unit === 'pcs' || unit === '' ? formatShort(n) : `${formatShort(n)} ${unit}`;
  return approximate ? `about ${counted}` : counted;
}

function costOf({ amount, price }: Wanted, total: Exact | null, packs: Exact | null): Exact | null {
  if (price === null || amount === null || total === null || price.per <= 0 || !pricedUnits.has(amount.unit))
    return null;
  const sum = exactOf(price.amount);
  return packs !== null ? times(sum, packs) : dividedBy(times(sum, total), exactOf(price.per));
}

function sumsOf(rows: readonly ToBuy[]): Sums {
  const totals = new Map<string | null, Exact>();
  const priced = rows.filter((row) => row.cost !== null);
  for (const { wanted, cost } of priced) {
    const currency = wanted.price?.currency ?? null;
    totals.set(currency, plus(totals.get(currency) ?? zero, cost ?? zero));
  }
  const dates = priced.flatMap(({ wanted }) => wanted.price?.date ?? []).sort();
  const [first] = dates;
  const last = dates.at(-1);
  return {
    sums: [...totals].map(([currency, total]) => moneyText(total, currency)),
    priced: priced.length,
    rows: rows.length,
    dates: first === undefined || last === undefined ? null : [first, last],
  };
}

/** `12.40 EUR`, rounded once at the end; the number alone where the currency is not known. */
export function moneyText(money: Exact, currency: string | null): string {
  const number = formatExact(money, 2);
  return currency === null ? number : `${number} ${currency}`;
}
