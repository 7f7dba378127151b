import type { Shopping, Sums, ToBuy } from './shopping.ts';
import { moneyText } from './shopping.ts';

/** `6`, `6 + 2 spare`, `about 3`, `not said`. */
export function amountWords({ wanted, amount, spares }: ToBuy): string {
  if (amount === '') return wanted.open;
  return spares === '' ? amount : `${amount} + ${spares} spare`;
}

/** What the row's price is for, where it is for a pack. */
export function packWords({ wanted, packs }: ToBuy): string {
  if (packs === '') return '';
  return packs === '1' ? `1 pack of ${wanted.price?.per}` : `${packs} packs of ${wanted.price?.per}`;
}

export function costWords({ wanted, cost }: ToBuy): string {
  return cost === null ? '' : moneyText(cost, wanted.price?.currency ?? null);
}

/** What rows cost together, what that counts, and from when its prices are. Empty where nothing has a price. */
export function sumWords({ sums, priced, rows, dates }: Sums): string {
  if (priced === 0) return '';
  const basis = priced === rows ? '' : `, for the ${priced} of ${rows} rows with a price`;
  return `${sums.join(' and ')}${basis}${dates === null ? '' : `, ${dateWords(dates)}`}.`;
}

function dateWords([first, last]: readonly [string, string]): string {
  return first === last ? `by prices of ${first}` : `by prices from ${first} to ${last}`;
}

/** For how many builds the list is, and what it leaves out. */
export function stateWords(builds: number, owned: number, left: number): string {
  const whole = `For ${builds === 1 ? 'one build' : `${builds} builds`}`;
  if (left === 0 && owned > 0) return `${whole} you have all of it.`;
  if (owned === 0) return `${whole}, nothing left out.`;
  return `${whole}, without the ${owned === 1 ? 'one row' : `${owned} rows`} that you have ticked.`;
}

const columns = [
  'Supplier',
  'References',
  'Amount',
  'Spares',
  'Packs',
  'Part',
  'Value',
  'Ratings',
  'Package',
  'Part number',
  'Price',
  'Price for',
  'Currency',
  'Price date',
  'Cost',
  'Address',
  'Note',
];

/** The list as rows of cells under their headings, for a spreadsheet. */
export function shoppingRows({ errands }: Shopping): string[][] {
  const rows = errands.flatMap((errand) => errand.rows);
  return [
    columns,
    ...rows.map((row) => {
      const { wanted } = row;
      const { price } = wanted;
      return [
        wanted.supplier ?? '',
        wanted.refs,
        row.amount,
        row.spares,
        row.packs,
        wanted.name,
        wanted.value,
        wanted.ratings,
        wanted.body,
        wanted.mpn,
        price === null ? '' : String(price.amount),
        price === null ? '' : String(price.per),
        price?.currency ?? '',
        price?.date ?? '',
        row.cost === null ? '' : moneyText(row.cost, null),
        wanted.link,
        wanted.note,
      ];
    }),
  ];
}
