import { describe, expect, it } from 'vitest';
import { parseDate } from '#notation/dates.ts';
import { parseMoney } from '#notation/money.ts';
import currencies from '../../../src/notation/currencies.json';

const sums = [0, 0.04, 0.82, 1.2, 3, 12.5, 99.99, 1234.5, 98765.43, 1234567.89];

describe('sums of money that ICU has written', () => {
  it.each([
    ['en-US', 'EUR'],
    ['en-GB', 'GBP'],
    ['de-DE', 'EUR'],
    ['fr-FR', 'EUR'],
    ['de-CH', 'CHF'],
    ['pl-PL', 'PLN'],
    ['cs-CZ', 'CZK'],
    ['pt-BR', 'BRL'],
    ['en-IE', 'EUR'],
    ['en-CA', 'USD'],
  ])('are read back in the habit of %s (%s)', (locale, currency) => {
    const format = new Intl.NumberFormat(locale, { style: 'currency', currency });
    const codeFormat = new Intl.NumberFormat(locale, { style: 'currency', currency, currencyDisplay: 'code' });
    for (const amount of sums) {
      expect(parseMoney(format.format(amount)), format.format(amount)).toEqual({ amount, currency });
      expect(parseMoney(codeFormat.format(amount)), codeFormat.format(amount)).toEqual({ amount, currency });
    }
  });

  it('leaves the currency open where ICU writes a bare $ for three of them', () => {
    for (const [locale, currency] of [
      ['en-US', 'USD'],
      ['en-CA', 'CAD'],
      ['en-AU', 'AUD'],
    ] as const) {
      const text = new Intl.NumberFormat(locale, { style: 'currency', currency }).format(3.5);
      expect(text).toBe('$3.50');
      expect(parseMoney(text)).toEqual({ amount: 3.5, currency: null });
    }
  });

  it('knows no currency that ICU does not', () => {
    const known = new Set(Intl.supportedValuesOf('currency'));
    expect(currencies.codes.length).toBeGreaterThan(140);
    expect([...currencies.codes, ...Object.values(currencies.symbols)].filter((code) => !known.has(code))).toEqual([]);
  });
});

describe('dates that ICU has written', () => {
  const days = Array.from({ length: 1200 }, (_, i) => new Date(Date.UTC(2023, 11, 1 + i)));
  it.each([
    ['en-GB', { day: 'numeric', month: 'long', year: 'numeric' }],
    ['en-GB', { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' }],
    ['en-US', { day: 'numeric', month: 'long', year: 'numeric' }],
    ['en-US', { weekday: 'long', day: 'numeric', month: 'short', year: 'numeric' }],
    ['de-DE', { day: '2-digit', month: '2-digit', year: 'numeric' }],
    ['sv-SE', { day: '2-digit', month: '2-digit', year: 'numeric' }],
    ['ja-JP', { day: '2-digit', month: '2-digit', year: 'numeric' }],
  ] as const)('are read back from %s %o', (locale, options) => {
    const format = new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' });
    for (const day of days) {
      expect(parseDate(format.format(day)), format.format(day)).toBe(day.toISOString().slice(0, 10));
    }
  });

  it('are read from slashes only where day and month cannot be confused', () => {
    const british = new Intl.DateTimeFormat('en-GB', {
      day: '2-digit',
      month: '2-digit',
      year: 'numeric',
      timeZone: 'UTC',
    });
    const american = new Intl.DateTimeFormat('en-US', {
      day: '2-digit',
      month: '2-digit',
      year: 'numeric',
      timeZone: 'UTC',
    });
    for (const day of days) {
      const clear = day.getUTCDate() > 12 || day.getUTCDate() === day.getUTCMonth() + 1;
      const expected = clear ? day.toISOString().slice(0, 10) : null;
      expect(parseDate(british.format(day))).toBe(expected);
      expect(parseDate(american.format(day))).toBe(expected);
    }
  });
});
