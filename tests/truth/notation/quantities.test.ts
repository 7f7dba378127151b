import { describe, expect, it } from 'vitest';
import { findQuantities, parseValue, parseValueCell } from '#notation/value.ts';
import cells from './cellReadings.json';
import factors from './unitFactors.json';

describe('units', () => {
  it.each(factors)('counts one %s in %s as another program does', (kind, spelling, factor) => {
    const read = parseValue(`1 ${spelling}`);
    expect(read?.kind).toBe(kind);
    expect(Math.abs((read?.si ?? 0) / Number(factor) - 1)).toBeLessThan(1e-12);
  });

  // ITS-90 and the definition of the Fahrenheit scale: 32 °F is 0 °C, 212 °F is 100 °C, and −40 is the same on both.
  it.each([
    ['32 °F', 0],
    ['212 °F', 100],
    ['77 °F', 25],
  ])('reads %s as %d °C', (text, celsius) => {
    expect(parseValue(text)).toEqual({ kind: 'temperature', si: expect.closeTo(celsius, 9), text });
  });
  it('reads −40 °F as −40 °C', () => {
    expect(findQuantities('at −40 °F')[0]?.quantity.si).toBeCloseTo(-40, 9);
  });
});

describe('cells that another reader has read', () => {
  const kinds = { resistor: 'resistance', capacitor: 'capacitance' } as const;
  it.each(cells)('$type $text', (cell) => {
    const kind = kinds[cell.type as keyof typeof kinds];
    const read = parseValueCell(cell.text, { kind });
    const expected = cell.resistance ?? cell.capacitance ?? Number.NaN;
    expect(read.value?.kind).toBe(kind);
    expect(Math.abs((read.value?.si ?? Number.NaN) - expected)).toBeLessThanOrEqual(1e-12 * expected);
    expect(read.package).toBe(cell.size ?? null);
    expect(ratingOf(read.ratings, 'tolerance')).toBe(cell.tolerance === undefined ? undefined : cell.tolerance / 100);
    expect(ratingOf(read.ratings, 'power')).toBe(cell.power_rating);
    expect(ratingOf(read.ratings, 'voltage')).toBe(cell.voltage_rating);
  });
});

function ratingOf(ratings: readonly { kind: string; si: number }[], kind: string): number | undefined {
  return ratings.find((rating) => rating.kind === kind)?.si;
}
