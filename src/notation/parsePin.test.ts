import { describe, expect, it } from 'vitest';
import { parsePin } from './parsePin.ts';

function read(text: string): [string, number | null, string | null] {
  const { family, number, port } = parsePin(text);
  return [family, number, port];
}

describe('parsePin', () => {
  it.each([
    ['D5', 'digital', 5],
    ['~D5', 'digital', 5],
    ['board.D13', 'digital', 13],
    ['A0', 'analogue', 0],
    ['GPIO5', 'gpio', 5],
    ['GPIO 5', 'gpio', 5],
    ['GPIO_NUM_4', 'gpio', 4],
    ['IO16', 'gpio', 16],
    ['GP15', 'gpio', 15],
    ['board.GP15', 'gpio', 15],
    ['13', 'number', 13],
    ['pin 7', 'number', 7],
    ['~9', 'number', 9],
    ['`D5`', 'digital', 5],
    ['"GP2"', 'gpio', 2],
  ])('reads %s as %s %d', (text, family, number) => {
    expect(read(text)).toEqual([family, number, null]);
  });

  it.each([
    ['PA5', 'A', 5],
    ['PB_12', 'B', 12],
    ['P0.13', '0', 13],
  ])('reads %s as line %s of a port, number %d', (text, port, number) => {
    expect(read(text)).toEqual(['port', number, port]);
  });

  it.each(['5V', '3V3', '3.3 V', '+5V', 'GND', 'GND2', '0V', 'VIN', 'VCC', 'VBUS', 'V+', '+', '−', '-', 'AGND'])(
    'reads %s as a supply',
    (text) => {
      expect(read(text)).toEqual(['power', null, null]);
    },
  );

  it.each(['SDA', 'IN', 'LED_BUILTIN', 'AREF', 'D[0]', 'P13', 'ADC1_CH0', 'DIN', 'COM', ''])(
    'takes “%s” for a name',
    (text) => {
      expect(read(text)).toEqual(['named', null, null]);
    },
  );

  it.each(['__init__', '~OE~', 'D[0]', '/RESET', 'RX\\TX', 'é'])('keeps %s as written', (text) => {
    expect(parsePin(text).text).toBe(text);
  });

  it('takes off what surrounds the name', () => {
    expect([' D5 ', '`D5`', 'board.D5', 'pin D5'].map((text) => parsePin(text).text)).toEqual(['D5', 'D5', 'D5', 'D5']);
  });
});
