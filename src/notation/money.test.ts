import { describe, expect, it } from 'vitest';
import { parseMoney } from './money.ts';

describe('parseMoney', () => {
  it.each([
    ['€ 1,20', 1.2, 'EUR'],
    ['1.234,50 EUR', 1234.5, 'EUR'],
    ['USD 3', 3, 'USD'],
    ['£2', 2, 'GBP'],
    ['US$3', 3, 'USD'],
    ['US $3', 3, 'USD'],
    ['USD $3', 3, 'USD'],
    ['A$4.50', 4.5, 'AUD'],
    ['3,– €', 3, 'EUR'],
    ['~€3', 3, 'EUR'],
    ['€0.82/pc', 0.82, 'EUR'],
    ['0,045 €', 0.045, 'EUR'],
    ['£1,234', 1234, 'GBP'],
    ['35 euros', 35, 'EUR'],
  ])('reads %s', (text, amount, currency) => {
    expect(parseMoney(text)).toEqual({ amount, currency });
  });

  it('does not tell a currency from a sign that several share', () => {
    expect(['$0.82', '¥100', 'kr 20', '12 dollars', '0.04 '].map((text) => parseMoney(text)?.currency)).toEqual([
      null,
      null,
      null,
      null,
      null,
    ]);
  });

  it('takes the column’s currency where the text does not tell, and only there', () => {
    expect(parseMoney('$0.82', 'CAD')).toEqual({ amount: 0.82, currency: 'CAD' });
    expect(parseMoney('0.04', 'EUR')).toEqual({ amount: 0.04, currency: 'EUR' });
    expect(parseMoney('€3', 'USD')).toEqual({ amount: 3, currency: 'EUR' });
  });

  it('reads three digits after one sign by the habit of the currency', () => {
    expect(parseMoney('$1,234')?.amount).toBe(1234);
    expect(parseMoney('$1.234')?.amount).toBe(1.234);
    expect(parseMoney('€1.234')).toBeNull();
    expect(parseMoney('1,234')).toBeNull();
  });

  it.each(['', '-', 'free', 'n/a', '-3', '3-5 USD', 'LED 3', 'USD 3 EUR', '$5.', '3 per 10', '1.2.3 €', 'EUR'])(
    'reads no sum in “%s”',
    (text) => {
      expect(parseMoney(text)).toBeNull();
    },
  );
});
