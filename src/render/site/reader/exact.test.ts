import { describe, expect, it } from 'vitest';
import { dividedBy, exactOf, formatExact, formatShort, plus, roundedUp, times, zero } from './exact.ts';

const sum = (...numbers: number[]) => numbers.map(exactOf).reduce(plus, zero);

describe('exact', () => {
  it('adds and multiplies decimals as on paper, where floating point does not', () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(formatShort(sum(0.1, 0.2))).toBe('0.3');
    expect(1.1 * 3).not.toBe(3.3);
    expect(formatShort(times(exactOf(1.1), exactOf(3)))).toBe('3.3');
    expect(1.005 * 100).not.toBe(100.5);
    expect(formatExact(times(exactOf(1.005), exactOf(100)), 2)).toBe('100.50');
  });

  it('rounds halves up, once', () => {
    expect(formatExact(exactOf(1.005), 2)).toBe('1.01');
    expect((1.005).toFixed(2)).toBe('1.00');
    expect(formatExact(times(exactOf(0.005), exactOf(3)), 2)).toBe('0.02');
    expect(formatExact(exactOf(0.995), 2)).toBe('1.00');
  });

  it('divides without losing the rest', () => {
    const third = dividedBy(exactOf(1), exactOf(3));
    expect(formatExact(times(third, exactOf(3)), 2)).toBe('1.00');
    expect(formatExact(third, 2)).toBe('0.33');
  });

  it('takes numbers that are written with a power of ten', () => {
    expect([formatShort(exactOf(1e21)), formatShort(exactOf(1.5e-7)), formatShort(exactOf(2.5e-6))]).toEqual([
      `1${'0'.repeat(21)}`,
      '0',
      '0.000003',
    ]);
  });

  it('drops no nought of a whole number', () => {
    expect([formatShort(exactOf(100)), formatShort(zero), formatShort(exactOf(0.5))]).toEqual(['100', '0', '0.5']);
  });

  it.each([
    [10, 10, '1'],
    [11, 10, '2'],
    [1, 10, '1'],
    [0, 10, '0'],
  ])('needs for %d pieces in packs of %d %s packs', (pieces, pack, packs) => {
    expect(formatShort(roundedUp(dividedBy(exactOf(pieces), exactOf(pack))))).toBe(packs);
  });
});
