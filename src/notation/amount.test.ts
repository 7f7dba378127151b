import { describe, expect, it } from 'vitest';
import { amountUnitOf, parseAmount, parseSpares } from './amount.ts';

describe('parseAmount', () => {
  it.each([
    ['4', 4, 'pcs'],
    ['2.00', 2, 'pcs'],
    ['0', 0, 'pcs'],
    ['4x', 4, 'pcs'],
    ['x4', 4, 'pcs'],
    ['× 4', 4, 'pcs'],
    ['58 pcs', 58, 'pcs'],
    ['1 lot', 1, 'lot'],
    ['1 set', 1, 'set'],
    ['2 pairs', 2, 'pair'],
    ['2 m', 2, 'm'],
    ['1,5 m', 1.5, 'm'],
    ['1/2 m', 0.5, 'm'],
    ['30 centimetres', 30, 'cm'],
    ['10 (+4)', 10, 'pcs'],
    ['10 (4 spare)', 10, 'pcs'],
    ['4 (2 per side)', 4, 'pcs'],
    ['4 (two on each half)', 4, 'pcs'],
    ['1 pack of 10', 1, 'pack'],
  ])('reads %s as exactly %d %s', (text, n, unit) => {
    expect(parseAmount(text)).toEqual({ n, unit, approximate: false });
  });

  it.each([
    ['~30cm', 30, 'cm'],
    ['~2m', 2, 'm'],
    ['about 2 m', 2, 'm'],
    ['8 - 10', 8, 'pcs'],
    ['8–10 cm', 8, 'cm'],
    ['4+', 4, 'pcs'],
    ['at least 3', 3, 'pcs'],
    ['As needed', 1, 'as needed'],
    ['as required', 1, 'as needed'],
  ])('reads %s as about %d %s', (text, n, unit) => {
    expect(parseAmount(text)).toEqual({ n, unit, approximate: true });
  });

  it.each([
    '',
    ' ',
    '-',
    'foo',
    '-3',
    '1,000',
    '10 k',
    '10 kΩ',
    '2/4',
    '1/2',
    '2 × 3',
    '10 - 8',
    '4 per side',
    '1 (pack of 10)',
    '2-pin',
    'n/a',
    'x',
    'x2 m',
  ])('reads no amount in “%s”', (text) => {
    expect(parseAmount(text)).toBeNull();
  });
});

describe('amountUnitOf', () => {
  it('knows a unit by its words', () => {
    expect([amountUnitOf('Pieces'), amountUnitOf('metres'), amountUnitOf('kΩ')]).toEqual(['pcs', 'm', null]);
  });
});

describe('parseSpares', () => {
  it.each([
    ['10 (+4)', 4],
    ['10 (4 spare)', 4],
    ['6 (+ 2 spares)', 2],
  ])('reads the spares of %s as %d', (text, n) => {
    expect(parseSpares(text)).toBe(n);
  });
  it.each(['10', '4 (2 per side)', '(spare)', '1 spare', ''])('finds none in “%s”', (text) => {
    expect(parseSpares(text)).toBeNull();
  });
});
