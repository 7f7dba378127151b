import { describe, expect, it } from 'vitest';
import { isPreferred, nearestPreferred, preferredSeries } from '#notation/series.ts';
import listed from './eSeries.json';

const sizes = [3, 6, 12, 24, 48, 96, 192] as const;

describe('preferred numbers by IEC 60063', () => {
  it.each(sizes)('E%d is as listed', (n) => {
    expect(preferredSeries(n)).toEqual(listed[n]);
  });

  it('lists 920 in E192, where the formula gives 919', () => {
    expect(Math.round(100 * 10 ** (185 / 192))).toBe(919);
    expect(preferredSeries(192)[185]).toBe(920);
  });

  it('shares just 10 11 13 15 20 75 between E24 and E96', () => {
    const shared = listed[24].filter((digits) => listed[96].includes(digits * 10));
    expect(shared).toEqual([10, 11, 13, 15, 20, 75]);
    expect(listed[24].filter((digits) => isPreferred(digits, 96))).toEqual(shared);
  });

  it('finds 4.75 kΩ as the E96 number nearest to 4.7 kΩ', () => {
    expect(nearestPreferred(4700, 96)).toBe(4750);
  });

  it('goes to the next decade for 9.9', () => {
    expect(nearestPreferred(9.9, 24)).toBe(10);
    expect(nearestPreferred(0.0099, 12)).toBe(0.01);
  });

  it('goes by ratio, not by difference', () => {
    // Between 10 and 22 the even ratio is at √220 = 14.83, the even difference at 16.
    expect(nearestPreferred(15, 3)).toBe(22);
    expect(nearestPreferred(14.8, 3)).toBe(10);
  });
});
