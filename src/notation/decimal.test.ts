import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDecimal, parseNumber } from './decimal.ts';

describe('parseNumber', () => {
  it.each([
    ['4.7', 4.7],
    ['4,7', 4.7],
    ['.47', 0.47],
    [',5', 0.5],
    ['0,047', 0.047],
    ['1 000', 1000],
    ["1'000", 1000],
    ['1,000,000', 1_000_000],
    ['1.000.000', 1_000_000],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1.234', 1.234],
    ['1e-6', 1e-6],
    ['1/4', 0.25],
    ['1 1/2', 1.5],
    ['0', 0],
  ])('reads %s as %d', (text, n) => {
    expect(parseNumber(text)).toBe(n);
  });

  it('leaves 1,000 open, which is one or a thousand', () => {
    expect(parseNumber('1,000')).toBeNull();
    expect(parseNumber('470,000')).toBeNull();
  });

  it.each([
    '',
    '.',
    ',',
    '0603',
    '00',
    '4.',
    '1 00',
    '1.2.3',
    '1,2,3',
    '1 000,000.5',
    '5/4',
    '1/0',
    '25/100V',
    '1e',
    'e5',
    '1e9999',
  ])('reads no number in “%s”', (text) => {
    expect(parseNumber(text)).toBeNull();
  });

  it('reads every number that JavaScript writes without a sign', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e18, noNaN: true }), (n) => {
        expect(parseNumber(String(n))).toBe(n + 0);
      }),
      { seed: 1 },
    );
  });
});

describe('parseDecimal', () => {
  it('keeps the digits, so that a prefix is applied without a rounding error', () => {
    // As doubles, 0.1 × 10⁻⁶ is 9.999999999999999e-8.
    expect(parseDecimal('0.1')).toEqual({ digits: '0.1', exponent: 0 });
  });
});
