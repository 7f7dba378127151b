import { describe, expect, it } from 'vitest';
import { parseItem } from './parseItem.ts';

function read(text: string): [string, string[], string] {
  const { name, refs, amount } = parseItem(text);
  return [name, refs, `${amount.approximate ? '~' : ''}${amount.n} ${amount.unit}`];
}

describe('parseItem', () => {
  it.each([
    ['R1', 'R1', ['R1'], '1 pcs'],
    ['R1–R4', 'R1–R4', ['R1', 'R2', 'R3', 'R4'], '4 pcs'],
    ['R1/R2', 'R1/R2', ['R1', 'R2'], '2 pcs'],
    ['R1–R4 (4 pcs)', 'R1–R4', ['R1', 'R2', 'R3', 'R4'], '4 pcs'],
    ['R1 × 2', 'R1', ['R1'], '2 pcs'],
    ['H1 (the ring)', 'H1 (the ring)', ['H1'], '1 pcs'],
    ['R1 resistor', 'R1 resistor', ['R1'], '1 pcs'],
    ['led2 green', 'led2 green', ['LED2'], '1 pcs'],
    ['W1 30 cm', 'W1', ['W1'], '30 cm'],
    ['W1 ~30 cm', 'W1', ['W1'], '~30 cm'],
    ['W1 (30 cm)', 'W1', ['W1'], '30 cm'],
    ['M3 screw × 4', 'M3 screw', [], '4 pcs'],
    ['M3 screw x 4', 'M3 screw', [], '4 pcs'],
    ['M3 screw x4', 'M3 screw', [], '4 pcs'],
    ['4 × M3 screw', 'M3 screw', [], '4 pcs'],
    ['4x M3 screw', 'M3 screw', [], '4 pcs'],
    ['M3×10 screw × 4', 'M3×10 screw', [], '4 pcs'],
    ['M3×10 × 4', 'M3×10', [], '4 pcs'],
    ['solder', 'solder', [], '1 pcs'],
  ])('reads %s', (text, name, refs, amount) => {
    expect(read(text)).toEqual([name, refs, amount]);
  });

  it.each([
    'M3 × 10',
    'M3x10',
    '2 × 20 header',
    '2x20 header',
    '4x4 keypad',
    '4 x 20 header',
    'USB cable 1 m',
    'tape (2)',
    'box 10 × 20',
  ])('takes the numbers of “%s” for sizes or marks, not for an amount', (text) => {
    expect(read(text)).toEqual([text, [], '1 pcs']);
  });

  it('takes no length after a part that is no wire for an amount', () => {
    expect(read('LED1 5 mm')).toEqual(['LED1 5 mm', ['LED1'], '1 pcs']);
  });

  it('takes the thread of a screw for no reference', () => {
    expect(parseItem('M3 screw').ref).toBeNull();
  });

  it('gives one reference where exactly one is named', () => {
    expect([parseItem('R1').ref, parseItem('R1–R4').ref, parseItem('tape').ref]).toEqual(['R1', null, null]);
  });
});
