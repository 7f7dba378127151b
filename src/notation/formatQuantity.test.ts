import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type QuantityKind, siUnits } from '#core/quantity.ts';
import { formatQuantity } from './formatQuantity.ts';
import { parseValue } from './parseValue.ts';
import { sameQuantity } from './sameQuantity.ts';

describe('formatQuantity', () => {
  it.each([
    ['resistance', 330, '330 Ω'],
    ['resistance', 4700, '4.7 kΩ'],
    ['resistance', 0, '0 Ω'],
    ['capacitance', 1e-7, '100 nF'],
    ['capacitance', 4.7e-3, '4700 µF'],
    ['capacitance', 0.47, '0.47 F'],
    ['inductance', 1e-5, '10 µH'],
    ['voltage', -5, '−5 V'],
    ['voltage', 3.2987, '3.3 V'],
    ['current', 0.02, '20 mA'],
    ['power', 0.25, '250 mW'],
    ['frequency', 32_768, '32.768 kHz'],
    ['frequency', 1591.549431, '1.59 kHz'],
    ['charge', 7200, '2000 mAh'],
    ['energy', 38_880, '10.8 Wh'],
    ['length', 0.3, '300 mm'],
    ['mass', 0.25, '250 g'],
    ['time', 900, '15 min'],
    ['time', 0.05, '50 ms'],
    ['temperature', 25, '25 °C'],
    ['tolerance', 0.05, '±5 %'],
    ['tolerance', 2e-5, '±20 ppm'],
  ] as const)('writes a %s of %d as %s', (kind, si, text) => {
    expect(formatQuantity(kind, si)).toBe(text);
  });

  it('moves to the next prefix when rounding fills the digits', () => {
    expect(formatQuantity('resistance', 999.6)).toBe('1 kΩ');
    expect(formatQuantity('resistance', 999.4)).toBe('999 Ω');
  });

  it('uses the micro sign that Latin-1 holds', () => {
    expect(formatQuantity('current', 5e-6)).toBe('5 \u00b5A');
  });

  it('stops at what is no number', () => {
    expect(() => formatQuantity('voltage', Number.NaN)).toThrow(/voltage/);
  });

  const kinds = Object.keys(siUnits) as QuantityKind[];
  it.each(kinds)('is read back within three digits, and then written the same (%s)', (kind) => {
    const signed = kind === 'voltage' || kind === 'current' || kind === 'temperature';
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 9.99, noNaN: true }),
        fc.integer({ min: -11, max: 11 }),
        fc.boolean(),
        (m, e, minus) => {
          const si = (signed && minus ? -1 : 1) * m * 10 ** e;
          const text = formatQuantity(kind, si);
          const read = parseValue(text);
          expect(read?.kind, text).toBe(kind);
          expect(Math.abs((read?.si ?? 0) / si - 1), text).toBeLessThan(0.0051);
          expect(formatQuantity(kind, read?.si ?? 0)).toBe(text);
        },
      ),
      { seed: 3, numRuns: 300 },
    );
  });

  it('loses nothing of a value that has three digits', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 999 }), fc.integer({ min: -14, max: 6 }), (m, e) => {
        const si = Number(`${m}e${e}`);
        const quantity = { kind: 'capacitance', si, text: '' } as const;
        const read = parseValue(formatQuantity('capacitance', si));
        expect(read !== null && sameQuantity(read, quantity)).toBe(true);
      }),
      { seed: 4 },
    );
  });
});
