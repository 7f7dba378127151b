import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparePins } from './comparePins.ts';

describe('comparePins', () => {
  it.each([
    ['GPIO5', 'IO5'],
    ['GPIO5', 'GP5'],
    ['GPIO_NUM_5', '5'],
    ['5', 'pin 5'],
    ['D5', 'board.D5'],
    ['D5', '~D5'],
    ['PA5', 'pa_5'],
    ['SDA', 'sda'],
    ['GND', '0V'],
    ['GND', 'VSS'],
    ['GND', 'GND2'],
    ['3V3', '3.3V'],
    ['3V3', '+3.3 V'],
    ['5V', '+5V'],
    ['5V', '5.0V'],
    ['−', '-'],
    ['GPIO21/SDA', 'SDA'],
    ['SDA (GPIO21)', '21'],
    ['~OE~', '~OE~'],
  ])('holds %s and %s for one pin', (a, b) => {
    expect(comparePins(a, b)).toBe('same');
  });

  it.each([
    ['D5', 'D6'],
    ['GPIO5', 'GPIO6'],
    ['GPIO5', '6'],
    ['A0', 'A1'],
    ['PA5', 'PA6'],
    ['PA5', 'PB5'],
    ['SDA', 'SCL'],
    ['TX', 'RX'],
    ['GND', '5V'],
    ['GND', 'VIN'],
    ['5V', '3V3'],
    ['+', '−'],
    ['GND', 'D5'],
    ['3V3', 'GPIO5'],
    ['GPIO21/SDA', 'GPIO22/SCL'],
  ])('tells %s from %s', (a, b) => {
    expect(comparePins(a, b)).toBe('different');
  });

  it.each([
    ['D5', 'GPIO5', 'the label is another number on several boards'],
    ['D5', 'GPIO14', 'they are one pin on some boards'],
    ['D5', '5', 'they are one pin on some boards only'],
    ['A0', '0', 'analogue and digital counts meet'],
    ['A0', 'D14', 'they are one pin on some boards'],
    ['PA5', '5', 'a board counts its own way'],
    ['SDA', 'GPIO21', 'a bus can lie on many pins'],
    ['GND', '5', 'the fifth leg may be ground'],
    ['VIN', '5V', 'they may be joined on the board'],
    ['VCC', 'VDD', 'they may be joined'],
    ['3V', '3V3', 'a 3.3 V pin is often labelled so'],
    ['−', 'GND', 'the pole may be ground'],
    ['AGND', 'GND', 'they may be apart'],
    ['IN1/IN2', 'IN1', 'one label for two pins'],
    ['', '', 'nothing is named'],
  ])('cannot tell %s from %s, since %s', (a, b) => {
    expect(comparePins(a, b)).toBe('cannot-tell');
  });

  const names = fc.oneof(
    fc
      .constantFrom('D', 'A', 'GPIO', 'IO', 'GP', 'PA', 'P0.', '', 'IN')
      .chain((p) => fc.nat(40).map((n) => `${p}${n}`)),
    fc.constantFrom('GND', '0V', '5V', '3V3', '3V', 'VIN', '+', '-', 'SDA', 'SCL', 'GPIO21/SDA', 'D5 (SCL)', '~OE~'),
    fc.string({ maxLength: 8 }),
  );
  it('says the same whichever pin comes first', () => {
    fc.assert(
      fc.property(names, names, (a, b) => comparePins(a, b) === comparePins(b, a)),
      { seed: 10, numRuns: 2000 },
    );
  });
  it('holds every name for itself', () => {
    fc.assert(
      fc.property(names, (a) => a.trim() === '' || comparePins(a, a) !== 'different'),
      { seed: 11, numRuns: 2000 },
    );
  });
});
