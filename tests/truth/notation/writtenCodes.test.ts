import { describe, expect, it } from 'vitest';
import { capacitorCodeOf, colourBandsOf, eia96Of, smdResistorCodeOf, valueBandsOf } from '#notation/codes.ts';
import series from './eSeries.json';
import read from './printedCodes.json';
import table from './writtenCodes.json';

describe('codes as they are printed, by published worked examples', () => {
  it.each(table.threeFigures)('writes %s on a chip of %d Ω', (code, ohms) => {
    expect(smdResistorCodeOf(Number(ohms), 3)).toBe(code);
  });

  it.each(table.fourFigures)('writes the four figures %s on a chip of %d Ω', (code, ohms) => {
    expect(smdResistorCodeOf(Number(ohms), 4)).toBe(code);
  });

  it.each(table.eia96)('writes the three characters %s on a chip of %d Ω', (code, ohms) => {
    expect(eia96Of(Number(ohms))).toBe(code);
  });

  it('writes all 96 places of the listed series', () => {
    for (const [index, digits] of series['96'].entries()) {
      expect(eia96Of(digits * 100)).toBe(`${String(index + 1).padStart(2, '0')}C`);
    }
  });

  it('gives no three characters to a value that E96 does not list', () => {
    expect([eia96Of(4700), eia96Of(0), eia96Of(Number.NaN)]).toEqual([null, null, null]);
  });

  // A 9 for tenths of a picofarad and an R as the point are two codes of one value.
  it.each(read.capacitorPicofarads.filter(([code]) => /^\d\d[0-8]$|R/.test(String(code))))(
    'writes %s on a capacitor of %d pF',
    (code, picofarads) => {
      expect(capacitorCodeOf(Number(picofarads) / 1e12)).toBe(code);
    },
  );
});

describe('bands by IEC 60062, as examples in print have them', () => {
  it.each(table.fourAndFiveBands)('paints %s on %d Ω ±%d %%', (colours, ohms, percent) => {
    const bands = String(colours).split(' ');
    expect(colourBandsOf(Number(ohms), Number(percent) / 100, bands.length === 4 ? 4 : 5)).toEqual(bands);
  });

  it.each(table.sixBands)('paints %s on %d Ω ±%d %% with %d ppm/K', (colours, ohms, percent, ppm) => {
    const bands = String(colours).split(' ');
    expect(colourBandsOf(Number(ohms), Number(percent) / 100, 6, Number(ppm))).toEqual(bands);
    expect(valueBandsOf(Number(ohms), 3)).toEqual(bands.slice(0, 4));
  });

  it('paints no sixth band for a coefficient without a colour', () => {
    expect([colourBandsOf(220, 0.01, 6, 30), colourBandsOf(220, 0.01, 6)]).toEqual([null, null]);
  });
});
