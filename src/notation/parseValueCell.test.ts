import { describe, expect, it } from 'vitest';
import type { QuantityKind } from '#core/quantity.ts';
import { formatQuantity } from './formatQuantity.ts';
import { parseValueCell } from './parseValueCell.ts';

function read(text: string, kind?: QuantityKind): [string | null, string[], string | null] {
  const cell = parseValueCell(text, { kind });
  const write = (quantity: { kind: QuantityKind; si: number }) => formatQuantity(quantity.kind, quantity.si);
  return [cell.value === null ? null : write(cell.value), cell.ratings.map(write), cell.package];
}

describe('parseValueCell', () => {
  it.each([
    ['22u/25V', '22 µF', ['25 V'], null],
    ['1000p/2KV', '1 nF', ['2 kV'], null],
    ['330uF 20v', '330 µF', ['20 V'], null],
    ['100nF 0603 X7R 50V 10%', '100 nF', ['50 V', '±10 %'], '0603'],
    ['100nF,50V,0603', '100 nF', ['50 V'], '0603'],
    ['10k 1% 1/4W', '10 kΩ', ['±1 %', '250 mW'], null],
    ['10k±5%', '10 kΩ', ['±5 %'], null],
    ['4,7k 5%', '4.7 kΩ', ['±5 %'], null],
    ['4.7 k ohm, 0.25 W', '4.7 kΩ', ['250 mW'], null],
    ['16V-100uF', '100 µF', ['16 V'], null],
    ['50V 100nF SOT-23', '100 nF', ['50 V'], 'SOT-23'],
    ['16MHz 20pF HC49', '16 MHz', ['20 pF'], 'HC49'],
    ['1 000 pF', '1 nF', [], null],
    ['5V 2A', '5 V', ['2 A'], null],
  ])('reads %s', (text, value, ratings, body) => {
    expect(read(text)).toEqual([value, ratings, body]);
  });

  it('takes the quantity of the hinted kind for the value, wherever it stands', () => {
    expect(read('50V 104K', 'capacitance')).toEqual(['100 nF', ['50 V', '±10 %'], null]);
    expect(read('0805 330', 'resistance')).toEqual(['330 Ω', [], '0805']);
  });

  it('takes no rating for the value of a part that is named otherwise', () => {
    expect(read('1N4007 1A 1000V')).toEqual([null, ['1 A', '1 kV'], null]);
    expect(read('25V', 'capacitance')).toEqual([null, ['25 V'], null]);
    expect(read('10%')).toEqual([null, ['±10 %'], null]);
  });

  it('shows a value that contradicts the hint', () => {
    expect(read('100nF', 'resistance')[0]).toBe('100 nF');
  });

  it('reads no value out of a number that two signs share', () => {
    expect(read('4,7k,1%')).toEqual(['4.7 kΩ', ['±1 %'], null]);
    expect(read('3-5V')).toEqual([null, [], null]);
    expect(read('470/25V', 'capacitance')).toEqual([null, [], null]);
  });

  it('leaves a chip size that could be a number open where it stands alone', () => {
    expect(read('1206', 'resistance')).toEqual([null, [], null]);
    expect(read('0603', 'resistance')).toEqual([null, [], '0603']);
    expect(read('220 1206', 'resistance')).toEqual(['220 Ω', [], '1206']);
  });

  it.each(['ESP32-WROOM-32', 'from 5 to 7', 'DNP', '', '1N4148', 'WS2812B'])('reads nothing in “%s”', (text) => {
    expect(read(text)).toEqual([null, [], null]);
  });
});
