import { describe, expect, test } from 'vitest';
import { formatAmount, formatEnd, formatMoney, formatRefs } from './formatAmount.ts';

describe('formatAmount', () => {
  test('counted pieces have no unit, other amounts do, estimates say so', () => {
    expect(formatAmount({ n: 4, unit: 'pcs', approximate: false })).toBe('4');
    expect(formatAmount({ n: 0.1 + 0.2, unit: 'm', approximate: true })).toBe('about 0.3 m');
  });
});

describe('formatRefs', () => {
  test('three or more in a row are drawn together, two are not', () => {
    expect(formatRefs(['R1', 'R2', 'R3', 'R7', 'C1', 'C2'])).toBe('R1–R3, R7, C1, C2');
  });

  test('a run never crosses from one prefix to the next, nor runs backwards', () => {
    expect(formatRefs(['R1', 'C2', 'C1'])).toBe('R1, C2, C1');
    expect(formatRefs(['R09', 'R10'])).toBe('R09, R10');
  });
});

describe('formatEnd and formatMoney', () => {
  test('a part without a pin is named alone', () => {
    expect(formatEnd({ ref: 'U1', pin: 'D5' })).toBe('U1.D5');
    expect(formatEnd({ ref: 'H1', pin: '' })).toBe('H1');
  });

  test('money without a known currency claims none', () => {
    expect(formatMoney({ amount: 1.5, currency: 'EUR' })).toBe('1.50 EUR');
    expect(formatMoney({ amount: 1.5, currency: null })).toBe('1.50');
  });
});
