import { describe, expect, it } from 'vitest';
import { findMoney } from './findMoney.ts';

const read = (text: string) =>
  findMoney(text).map(({ from, to, least, most, currency }) => [text.slice(from, to), least, most, currency] as const);

describe('findMoney', () => {
  it.each([
    ['39.45 EUR', 39.45, 39.45, 'EUR'],
    ['EUR 39', 39, 39, 'EUR'],
    ['€12,50', 12.5, 12.5, 'EUR'],
    ['1,250 USD', 1250, 1250, 'USD'],
    ['$8.20', 8.2, 8.2, null],
    ['35 euros', 35, 35, 'EUR'],
    ['20 dollars', 20, 20, null],
    ['30–40 EUR', 30, 40, 'EUR'],
    ['€30 to €40', 30, 40, 'EUR'],
    ['$30-40', 30, 40, null],
    ['EUR 30 to 40', 30, 40, 'EUR'],
    ['between 30 and 40 euros', 30, 40, 'EUR'],
  ])('reads %s', (words, least, most, currency) => {
    const [found] = read(`The parts cost about ${words}, without postage.`);
    expect(found?.slice(1)).toEqual([least, most, currency]);
  });

  it('reads several in one text, each for itself', () => {
    expect(read('In 2026 the parts cost 12.00 EUR and the case 3 EUR.').map(([words]) => words)).toEqual([
      '12.00 EUR',
      '3 EUR',
    ]);
  });

  it('knows a sum to the hundredth from a round one', () => {
    expect(findMoney('9.58 EUR, about 10 EUR, 9.50–10.50 EUR').map(({ exact }) => exact)).toEqual([true, false, false]);
  });

  it.each(['12 V DC', 'LED 3', '3 CNC cuts', '40 pins', 'USB 3', '5 POUNDER'])('reads no money in “%s”', (text) => {
    expect(read(text)).toEqual([]);
  });
});
