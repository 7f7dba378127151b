import { describe, expect, it } from 'vitest';
import { tokensOf } from './tokens.ts';

describe('tokensOf', () => {
  it.each([
    ['M3 screws', ['m3', 'screw']],
    ['the builder’s boxes, batteries and switches', ['the', 'builder', 'box', 'battery', 'and', 'switch']],
    ['four rubber feet', ['four', 'rubber', 'foot']],
    ['glass lenses on a bus, a series of fuses', ['glass', 'lens', 'on', 'a', 'bus', 'a', 'series', 'of', 'fuse']],
    ['1N4148 GPIO_NUM_4 M2.5 wi-fi', ['1n4148', 'gpio_num_4', 'm2.5', 'wi', 'fi']],
    ['Größe', ['grosse']],
    ['', []],
  ])('parts “%s” into words', (text, tokens) => {
    expect(tokensOf(text)).toEqual(tokens);
  });

  it.each([
    ['a 4.7 kΩ resistor', 'A 4k7 resistor'],
    ['5 V, 20 mA', '5v 20ma'],
    ['0.1 µF', '100nF'],
  ])('gives “%s” and “%s” the same tokens', (one, other) => {
    expect(tokensOf(one)).toEqual(tokensOf(other));
  });

  it('keeps milli and mega apart', () => {
    expect(tokensOf('10 mΩ')).not.toEqual(tokensOf('10 MΩ'));
  });

  it('is not misled by names that every object has', () => {
    expect(tokensOf('constructors __proto__')).toEqual(['constructor', '__proto__']);
  });
});
