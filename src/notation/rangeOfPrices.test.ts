import { describe, expect, it } from 'vitest';
import { parseAmount } from './amount.ts';
import { rangeOfPrices } from './rangeOfPrices.ts';

const row = (amount: string, price: number | null, currency: string | null = 'EUR', per = 1) => ({
  price: price === null ? null : { amount: price, currency, per, date: null },
  amounts: [parseAmount(amount)].filter((one) => one !== null),
  fitted: true,
});
const rangeOf = (...args: Parameters<typeof row>) => {
  const range = rangeOfPrices([row(...args)]);
  return range && [range.least, range.most];
};

describe('rangeOfPrices', () => {
  it('has one reading of what is counted', () => {
    expect(rangeOf('4', 0.5)).toEqual([2, 2]);
    expect(rangeOf('10', 3, 'EUR', 25)).toEqual([1.2, 1.2]);
    expect(rangeOf('2 sets', 3)).toEqual([6, 6]);
  });

  it('leaves open whether a length is priced as it is or by the metre', () => {
    expect(rangeOf('60 cm', 2)).toEqual([1.2, 2]);
    expect(rangeOf('2 m', 0.5)).toEqual([0.5, 1]);
    expect(rangeOf('6 in', 3)).toEqual([1.5, 3]);
    expect(rangeOf('50 g', 20)).toEqual([1, 20]);
  });

  it('leaves open what a pack’s size is told of', () => {
    expect(rangeOf('2 packs', 5, 'EUR', 10)).toEqual([1, 10]);
    expect(rangeOf('1 roll', 4)).toEqual([4, 4]);
  });

  it('adds up, and tells how many rows it stands on', () => {
    expect(rangeOfPrices([row('3', 2), row('50 cm', 1), row('as needed', 4), row('1', null)])).toEqual({
      least: 6.5,
      most: 7,
      currency: 'EUR',
      priced: 2,
      rows: 4,
    });
  });

  it('adds no sums of several currencies', () => {
    expect(rangeOfPrices([row('1', 2), row('1', 2, 'USD')])).toBeNull();
    expect(rangeOfPrices([row('1', null)])).toBeNull();
  });
});
