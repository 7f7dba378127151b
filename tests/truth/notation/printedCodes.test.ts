import { describe, expect, it } from 'vitest';
import { parseCapacitorCode, parseEia96, parseSmdResistorCode } from '#notation/codes.ts';
import { parseValue, parseValueCell } from '#notation/value.ts';
import series from './eSeries.json';
import cases from './letterCodes.json';
import codes from './printedCodes.json';

/** Values run from picofarads to megohms, so that only the ratio tells. */
function expectNear(actual: number | undefined, expected: number): void {
  if (expected === 0) expect(actual).toBe(0);
  else expect(Math.abs((actual ?? 0) / expected - 1)).toBeLessThan(1e-12);
}

describe('the letter and digit code of IEC 60062', () => {
  it.each([...cases.resistance, ...cases.resistanceFromMemory])('reads %s as %d Ω', (code, ohms) => {
    const read = parseValue(String(code), { kind: 'resistance' });
    expect(read?.kind).toBe('resistance');
    expectNear(read?.si, Number(ohms));
    expectNear(parseValue(String(code))?.si, Number(ohms));
  });

  it.each(cases.capacitance)('reads %s as %d F', (code, farads) => {
    const read = parseValue(String(code), { kind: 'capacitance' });
    expect(read?.kind).toBe('capacitance');
    expectNear(read?.si, Number(farads));
  });

  it.each(cases.cells)('reads the cell %s as %d F for %d V', (cell, farads, volts) => {
    const read = parseValueCell(String(cell));
    expect(read.value?.kind).toBe('capacitance');
    expectNear(read.value?.si, Number(farads));
    expect(read.ratings.map(({ kind, si }) => [kind, si])).toEqual([['voltage', volts]]);
  });
});

describe('the code on capacitors by EIA-198', () => {
  it.each(codes.capacitorPicofarads)('reads %s as %d pF', (code, picofarads) => {
    expectNear(parseCapacitorCode(String(code))?.si, Number(picofarads) * 1e-12);
    expectNear(parseValue(String(code), { kind: 'capacitance' })?.si, Number(picofarads) * 1e-12);
  });

  // N is left to nanofarads in a value cell: `100N` is common in parts lists, ±30 % is not.
  it.each(codes.capacitorTolerancePercentFromMemory.filter(([letter]) => letter !== 'N' && letter !== 'F'))(
    'reads the letter %s after a code as ±%d %% (from memory of the standard)',
    (letter, percent) => {
      const { value, ratings } = parseValueCell(`104${letter}`, { kind: 'capacitance' });
      expectNear(value?.si, 100e-9);
      expect(ratings.map(({ kind, si }) => [kind, si * 100])).toEqual([['tolerance', percent]]);
    },
  );
});

describe('the code on chip resistors by IEC 60062', () => {
  it.each(codes.chipResistorOhms)('reads %s as %d Ω', (code, ohms) => {
    expectNear(parseSmdResistorCode(String(code))?.si, Number(ohms));
  });

  it.each(codes.eia96Ohms)('reads the three characters %s as %d Ω', (code, ohms) => {
    expectNear(parseEia96(String(code))?.si, Number(ohms));
  });

  it('reads all 96 places with all letters as the listed E96 number times the letter', () => {
    for (const [index, digits] of series['96'].entries()) {
      for (const [letter, exponent] of Object.entries(codes.eia96Exponents)) {
        const code = String(index + 1).padStart(2, '0') + letter;
        expectNear(parseEia96(code)?.si, Number(`${digits}e${exponent}`));
      }
    }
  });

  it('does not read 01Y as 0.01 Ω, as a widely copied text does', () => {
    expect(parseEia96('01Y')?.si).toBe(1);
  });

  it.each(codes.eia96Rejected)('rejects %s, which is no place of E96', (code) => {
    expect(parseEia96(code)).toBeNull();
  });
});
