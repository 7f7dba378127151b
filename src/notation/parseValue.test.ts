import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { QuantityKind } from '#core/quantity.ts';
import { parseValue } from './parseValue.ts';

function read(text: string, kind?: QuantityKind): [QuantityKind, number] | null {
  const quantity = parseValue(text, { kind });
  return quantity === null ? null : [quantity.kind, quantity.si];
}

describe('parseValue', () => {
  it.each([
    ['4k7', 4700],
    ['4.7k', 4700],
    ['4K7', 4700],
    ['4,7 k', 4700],
    ['4.7 kΩ', 4700],
    ['4.7k\u2126', 4700],
    ['4.7k ohm', 4700],
    ['330 ohm', 330],
    ['330-ohm', 330],
    ['2R2', 2.2],
    ['R47', 0.47],
    ['0R', 0],
    ['470R', 470],
    ['1M0', 1e6],
    ['1M', 1e6],
    ['4L7', 0.0047],
    ['1 000 Ω', 1000],
    ['1e3 Ω', 1000],
  ])('reads %s as a resistance of %d Ω', (text, ohms) => {
    expect(read(text)).toEqual(['resistance', ohms]);
  });

  it.each([
    ['100n', 1e-7],
    ['0.1u', 1e-7],
    ['0u1', 1e-7],
    ['2µ2', 2.2e-6],
    ['2\u03bc2', 2.2e-6],
    ['1000 pF', 1e-9],
    ['10uf', 1e-5],
  ])('reads %s as a capacitance of %d F', (text, farads) => {
    expect(read(text)).toEqual(['capacitance', farads]);
  });

  it.each([
    ['5 V', 'voltage', 5],
    ['−5 V', 'voltage', -5],
    ['12 VDC', 'voltage', 12],
    ['5 V DC', 'voltage', 5],
    ['3V3', 'voltage', 3.3],
    ['20mA', 'current', 0.02],
    ['1/4 W', 'power', 0.25],
    ['½ W', 'power', 0.5],
    ['0.25W', 'power', 0.25],
    ['16 MHz', 'frequency', 16e6],
    ['16mhz', 'frequency', 16e6],
    ['2000 mAh', 'charge', 7200],
    ['30 cm', 'length', 0.3],
    ['2 m', 'length', 2],
    ['1 %', 'tolerance', 0.01],
    ['±5%', 'tolerance', 0.05],
    ['−40 °C', 'temperature', -40],
    ['5 min', 'time', 300],
  ] as const)('reads %s as a %s of %d', (text, kind, si) => {
    expect(read(text)).toEqual([kind, si]);
  });

  it('tells milli from mega by case', () => {
    expect(read('10m', 'resistance')).toEqual(['resistance', 0.01]);
    expect(read('10M', 'resistance')).toEqual(['resistance', 1e7]);
    expect(read('10 mΩ')).toEqual(['resistance', 0.01]);
    expect(read('10 MΩ')).toEqual(['resistance', 1e7]);
  });

  it('reads capital N, U and P only where a capacitance is expected', () => {
    expect(read('100N', 'capacitance')).toEqual(['capacitance', 1e-7]);
    expect(read('4U7', 'capacitance')).toEqual(['capacitance', 4.7e-6]);
    expect(read('5P6', 'capacitance')).toEqual(['capacitance', 5.6e-12]);
    expect(read('100N')).toBeNull();
    expect(read('5P6')).toBeNull();
  });

  it('takes a bare number in the hinted unit, and in none without a hint', () => {
    expect(read('470', 'resistance')).toEqual(['resistance', 470]);
    expect(read('5', 'voltage')).toEqual(['voltage', 5]);
    expect(read('470')).toBeNull();
  });

  it('takes three digits for a code where a capacitance is expected, and no other bare number', () => {
    expect(read('104', 'capacitance')).toEqual(['capacitance', 1e-7]);
    expect(read('104K', 'capacitance')).toEqual(['capacitance', 1e-7]);
    expect(read('4R7', 'capacitance')).toEqual(['capacitance', 4.7e-12]);
    expect(read('10', 'capacitance')).toBeNull();
    expect(read('4700', 'capacitance')).toBeNull();
  });

  it('reads the K of 104K as kilo for a resistor and as a tolerance for a capacitor', () => {
    expect(read('104K', 'resistance')).toEqual(['resistance', 104_000]);
    expect(read('104K', 'capacitance')).toEqual(['capacitance', 1e-7]);
  });

  it('reads a short inductance where one is expected', () => {
    expect(read('10u', 'inductance')).toEqual(['inductance', 1e-5]);
    expect(read('10', 'inductance')).toBeNull();
  });

  it('lets a stated unit outweigh the hint', () => {
    expect(read('100nF', 'resistance')).toEqual(['capacitance', 1e-7]);
  });

  it.each([
    ['1,000 Ω', 'one ohm or a thousand'],
    ['2700K', 'a resistance or a colour of light'],
    ['300 K', 'a resistance or a temperature'],
    ['20MA', 'milliamperes or megaamperes'],
    ['5 mHz', 'millihertz or a slip for megahertz'],
    ['10 K', 'kilo-ohms or kelvins'],
    ['5G', 'gigaohms or a radio network'],
    ['4L', 'milliohms or litres'],
    ['10/16V', 'a fraction or two values'],
  ])('leaves %s open, which is %s', (text) => {
    expect(read(text)).toBeNull();
  });

  it('leaves 100F open where a capacitance is expected, which is 100 F or 10 pF within 1 %', () => {
    expect(read('100F', 'capacitance')).toBeNull();
    expect(read('10 F', 'capacitance')).toEqual(['capacitance', 10]);
  });

  it('leaves a twofold unit open where something else is expected', () => {
    expect(read('5m', 'time')).toBeNull();
    expect(read('70 F', 'temperature')).toBeNull();
  });

  it.each([
    '1N4148',
    '2N2222',
    'M3',
    '10³',
    '2.5 mm²',
    '3.3–5 V',
    'DNP',
    'n.m.',
    'NC',
    '',
    ' ',
    'k',
    '5 m/s',
    '20 ppm/K',
    '-4k7',
    '±5 V',
  ])('reads no value in “%s”', (text) => {
    expect(read(text)).toBeNull();
  });

  it('keeps the words as written', () => {
    expect(parseValue(' 4k7 ')?.text).toBe('4k7');
  });

  it('gives the same value for a number with a point, with a comma and with the letter between', () => {
    const digits = fc.tuple(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 9 }));
    fc.assert(
      fc.property(digits, fc.constantFrom('k', 'M', 'R'), ([whole, tenths], letter) => {
        const between = read(`${whole}${letter}${tenths}`);
        expect(between).not.toBeNull();
        expect(read(`${whole}.${tenths}${letter}`)).toEqual(between);
        expect(read(`${whole},${tenths} ${letter}`)).toEqual(between);
      }),
      { seed: 2 },
    );
  });
});
