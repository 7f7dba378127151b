import { describe, expect, it } from 'vitest';
import { parseEndpoint, parseWiringEnd } from './endpoint.ts';

const known = new Set(['U1', 'H1', 'BT1', 'R1']);

describe('parseEndpoint', () => {
  it.each([
    ['U1.D5', 'U1', 'D5'],
    ['u1.D5', 'U1', 'D5'],
    ['H1.5V', 'H1', '5V'],
    ['U1.3.3V', 'U1', '3.3V'],
    ['U1.P0.13', 'U1', 'P0.13'],
    ['U1.__init__', 'U1', '__init__'],
    ['U1.~OE~', 'U1', '~OE~'],
    ['U1.D[0]', 'U1', 'D[0]'],
    ['BT1.+', 'BT1', '+'],
    ['BT1.−', 'BT1', '−'],
    ['BT1+', 'BT1', '+'],
    ['U1 pin 5', 'U1', '5'],
    ['`U1.D5`', 'U1', 'D5'],
    ['U1.D5.', 'U1', 'D5'],
    ['U1.D5 (yellow)', 'U1', 'D5'],
  ])('reads %s as the pin of a known part', (text, ref, pin) => {
    expect(parseEndpoint(text, known)).toEqual({ ref, pin });
  });

  it('takes M2.5 for a pin only where there is an M2', () => {
    expect(parseEndpoint('M2.5', known)).toBeNull();
    expect(parseEndpoint('M2.5', new Set(['M2']))).toEqual({ ref: 'M2', pin: '5' });
  });

  it.each([
    'U1',
    'U1.',
    '.D5',
    'U1:D5',
    'U1 D5',
    'U1-D5',
    'U1 pin',
    'U1.D5 R1.1',
    'R1.2–U1.D5',
    'R1.2->U1.D5',
    'U2.D5',
    '',
  ])('reads no pin of a known part in “%s”', (text) => {
    expect(parseEndpoint(text, known)).toBeNull();
  });
});

describe('parseWiringEnd', () => {
  it.each([
    ['U1.D5', 'U1', 'D5'],
    ['U1:D5', 'U1', 'D5'],
    ['U1: D5', 'U1', 'D5'],
    ['U1 D5', 'U1', 'D5'],
    ['U1-5', 'U1', '5'],
    ['U1 pin 5', 'U1', '5'],
    ['BT1 −', 'BT1', '−'],
    ['ring.IN', 'RING', 'IN'],
    ['U1 D5 (SCL)', 'U1', 'D5'],
  ])('reads %s in a wiring table', (text, ref, pin) => {
    expect(parseWiringEnd(text)).toEqual({ ref, pin });
  });
  it.each(['U1', '5V', 'ring IN', 'from the ring', 'U1 pin', ''])('reads no end in “%s”', (text) => {
    expect(parseWiringEnd(text)).toBeNull();
  });
});
