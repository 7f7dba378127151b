import { describe, expect, it } from 'vitest';
import { colourBandsOf, parseColourBands } from '#notation/codes.ts';
import { parseValue, sameQuantity } from '#notation/value.ts';
import readings from './bandReadings.json';
import table from './colourBands.json';

const near = 12;

describe('colour bands by IEC 60062', () => {
  it.each(table.readings)('reads %s as %d Ω', (colours, ohms, percent, tempco) => {
    const read = parseColourBands(String(colours).split(' '));
    expect(read?.value.si).toBeCloseTo(Number(ohms), near);
    expect(read?.tolerance?.si ?? null).toEqual(percent === null ? null : expect.closeTo(Number(percent) / 100, near));
    expect(read?.tempco ?? null).toBe(tempco);
  });

  it('gives each colour its digit', () => {
    for (const [colour, digit] of Object.entries(table.digits)) {
      expect(parseColourBands(['brown', colour, 'black', 'gold'])?.value.si).toBe(10 + digit);
    }
  });

  it('gives each colour its power of ten', () => {
    for (const [colour, exponent] of Object.entries(table.exponents)) {
      const ohms = parseColourBands(['red', 'red', colour, 'gold'])?.value.si ?? 0;
      expect(Math.abs(ohms / (22 * 10 ** exponent) - 1)).toBeLessThan(1e-12);
    }
  });

  it('gives each colour its tolerance', () => {
    const all = { ...table.tolerancesPercent, ...table.tolerancesPercentFromMemory };
    for (const [colour, percent] of Object.entries(all)) {
      expect(parseColourBands(['red', 'red', 'black', colour])?.tolerance?.si).toBeCloseTo(percent / 100, near);
    }
  });

  it('takes no colour for a tolerance that the table gives none', () => {
    for (const colour of table.noToleranceBand) {
      expect(parseColourBands(['red', 'red', 'black', colour])).toBeNull();
    }
  });

  it('gives each colour its temperature coefficient (from memory of the standard)', () => {
    for (const [colour, ppm] of Object.entries(table.tempcoFromMemory)) {
      expect(parseColourBands(['red', 'red', 'black', 'black', 'brown', colour])?.tempco).toBe(ppm);
    }
  });

  it('agrees with another reader on more than a thousand four- and five-band resistors', () => {
    expect(readings.length).toBeGreaterThan(1000);
    for (const [colours, notation, percent] of readings) {
      const read = parseColourBands(String(colours).split(' '));
      const other = parseValue(String(notation), { kind: 'resistance' });
      expect(read !== null && other !== null && sameQuantity(read.value, other), `${colours}: ${notation}`).toBe(true);
      expect(read?.tolerance?.si, String(colours)).toBeCloseTo(Number(percent) / 100, near);
    }
  });

  it('writes back the very bands that another reader was given', () => {
    for (const [colours, notation, percent] of readings) {
      const bands = String(colours).split(' ');

      const ohms = parseValue(String(notation), { kind: 'resistance' })?.si ?? Number.NaN;
      expect(colourBandsOf(ohms, Number(percent) / 100, bands.length === 4 ? 4 : 5), String(notation)).toEqual(bands);
    }
  });
});
