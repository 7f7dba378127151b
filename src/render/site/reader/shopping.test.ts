import { describe, expect, it } from 'vitest';
import { readBuilds, shoppingFor, type Wanted } from './shopping.ts';
import { amountWords, costWords, packWords, shoppingRows, stateWords, sumWords } from './shoppingWords.ts';

const part = (id: string, told: Partial<Wanted> = {}): Wanted => ({
  id,
  refs: id,
  name: `part ${id}`,
  value: '',
  ratings: '',
  body: '',
  mpn: '',
  supplier: 'Corner shop',
  link: '',
  note: '',
  amount: { n: 1, unit: 'pcs', approximate: false },
  open: 'not said',
  spares: 0,
  price: null,
  ...told,
});
const price = (amount: number, told: Partial<NonNullable<Wanted['price']>> = {}): Wanted['price'] => ({
  amount,
  currency: 'EUR',
  per: 1,
  packed: false,
  date: null,
  ...told,
});
const pieces = (n: number) => ({ n, unit: 'pcs', approximate: false });
const none = new Set<string>();
const first = (wanted: Wanted, builds: number) => {
  const row = shoppingFor([wanted], builds, none).errands[0]?.rows[0];
  if (row === undefined) throw new Error('nothing to buy');
  return row;
};

describe('shoppingFor', () => {
  it('multiplies amounts exactly', () => {
    const wire = part('W1', { amount: { n: 0.1, unit: 'm', approximate: false }, price: price(1.1) });
    expect(amountWords(first(wire, 3))).toBe('0.3 m');
    expect(costWords(first(wire, 3))).toBe('0.33 EUR');
    expect(amountWords(first(part('R1', { amount: { n: 3, unit: 'pcs', approximate: true } }), 5))).toBe('about 15');
  });

  it('adds the spares that the maker names, for every build, and counts them in the cost', () => {
    const screw = part('H1', { amount: pieces(10), spares: 2, price: price(0.05) });
    expect([amountWords(first(screw, 3)), costWords(first(screw, 3))]).toEqual(['30 + 6 spare', '1.80 EUR']);
  });

  it.each([
    [1, '1 pack of 10', '0.90 EUR'],
    [4, '2 packs of 10', '1.80 EUR'],
  ])('buys whole packs for %d builds', (builds, packs, cost) => {
    const row = first(part('R1', { amount: pieces(3), price: price(0.9, { per: 10, packed: true }) }), builds);
    expect([packWords(row), costWords(row)]).toEqual([packs, cost]);
  });

  it('takes a share of a price that is for several without being a pack', () => {
    const row = first(part('R1', { amount: pieces(3), price: price(1, { per: 10 }) }), 1);
    expect([packWords(row), costWords(row)]).toEqual(['', '0.30 EUR']);
  });

  it('leaves out what is owned, and a shop from which nothing is left to buy', () => {
    const list = [part('R1'), part('C1', { supplier: 'Other shop' })];
    expect(shoppingFor(list, 1, new Set(['C1'])).errands.map(({ supplier }) => supplier)).toEqual(['Corner shop']);
    expect(shoppingFor(list, 1, new Set(['C1', 'R1'])).errands).toEqual([]);
  });

  it('keeps the suppliers in the order of the list, and what has none at the end', () => {
    const list = [
      part('A', { supplier: null }),
      part('B', { supplier: 'Zinc' }),
      part('C', { supplier: 'Alloy' }),
      part('D', { supplier: 'Zinc' }),
    ];
    const { errands } = shoppingFor(list, 1, none);
    expect(errands.map(({ supplier, rows }) => [supplier, rows.map((row) => row.wanted.id)])).toEqual([
      ['Zinc', ['B', 'D']],
      ['Alloy', ['C']],
      [null, ['A']],
    ]);
  });

  it('says what a list leaves open, and gives it no cost', () => {
    const row = first(part('R1', { amount: null, open: '4 or 6', price: price(1) }), 2);
    expect([amountWords(row), costWords(row)]).toEqual(['4 or 6', '']);
    expect(
      costWords(first(part('W1', { amount: { n: 30, unit: 'cm', approximate: false }, price: price(1) }), 1)),
    ).toBe('');
  });
});

describe('sums', () => {
  it('are told for each currency, with what they count and when the prices are from', () => {
    const list = [
      part('A', { price: price(0.1, { date: '2026-02-01' }) }),
      part('B', { price: price(0.2, { date: '2025-11-30' }) }),
      part('C', { price: price(3, { currency: 'GBP' }) }),
      part('D'),
    ];
    const { sums } = shoppingFor(list, 1, none);
    expect(sumWords(sums)).toBe(
      '0.30 EUR and 3.00 GBP, for the 3 of 4 rows with a price, by prices from 2025-11-30 to 2026-02-01.',
    );
  });

  it('round once at the end', () => {
    const list = ['A', 'B', 'C'].map((id) => part(id, { price: price(0.004) }));
    expect(sumWords(shoppingFor(list, 1, none).sums)).toBe('0.01 EUR.');
    expect(sumWords(shoppingFor([part('A')], 1, none).sums)).toBe('');
  });
});

describe('the number of builds', () => {
  it.each([
    ['1', 1],
    [' 12 ', 12],
    ['999', 999],
  ])('is read from %j', (text, builds) => {
    expect(readBuilds(text)).toBe(builds);
  });
  it.each(['', '0', '-1', '1.5', '1e3', '1000', 'two'])('is not read from %j', (text) => {
    expect(readBuilds(text)).toBeNull();
  });
});

it('tells for how many builds the list is and what it leaves out', () => {
  expect([stateWords(1, 0, 4), stateWords(3, 1, 3), stateWords(3, 2, 2), stateWords(2, 4, 0)]).toEqual([
    'For one build, nothing left out.',
    'For 3 builds, without the one row that you have ticked.',
    'For 3 builds, without the 2 rows that you have ticked.',
    'For 2 builds you have all of it.',
  ]);
});

it('makes a row of cells of each part under as many headings', () => {
  const rows = shoppingRows(shoppingFor([part('A', { price: price(0.5) }), part('B')], 2, none));
  expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  const [headings = [], cells = []] = rows;
  expect(Object.fromEntries(headings.map((heading, i) => [heading, cells[i]]))).toMatchObject({
    Supplier: 'Corner shop',
    Amount: '2',
    Price: '0.5',
    Currency: 'EUR',
    Cost: '1.00',
  });
});
