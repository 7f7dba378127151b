import { describe, expect, it } from 'vitest';
import { parseJoin } from './parseJoin.ts';

const known = new Set(['U1', 'H1', 'R1', 'BT1']);

function read(text: string): string | null {
  const join = parseJoin(text, known);
  return join === null ? null : `${join.from.ref}.${join.from.pin} ${join.to.ref}.${join.to.pin}`;
}

describe('parseJoin', () => {
  it.each([
    'H1.IN – R1.2',
    'H1.IN–R1.2',
    'H1.IN — R1.2',
    'H1.IN → R1.2',
    'H1.IN->R1.2',
    'H1.IN - R1.2',
    'H1.IN to R1.2',
    '`H1.IN` – `R1.2`',
  ])('reads both ends of %s', (text) => {
    expect(read(text)).toBe('H1.IN R1.2');
  });

  it.each([
    ['BT1.+ – U1.VIN', 'BT1.+ U1.VIN'],
    ['BT1.− – U1.GND', 'BT1.− U1.GND'],
    ['BT1.- - U1.GND', 'BT1.- U1.GND'],
    ['BT1.-–U1.GND', 'BT1.- U1.GND'],
    ['U1.VIN – BT1.+', 'U1.VIN BT1.+'],
    ['BT1+ – U1.VIN', 'BT1.+ U1.VIN'],
  ])('leaves the pole to the pin in %s', (text, ends) => {
    expect(read(text)).toBe(ends);
  });

  it.each([
    'H1.IN',
    'H1.IN-R1.2',
    'H1.IN – R1',
    'M2.5 – R1.2',
    'H1.IN – R1.2 – U1.D5',
    'H1.IN–R1.2–U1.D5',
    '– R1.2',
    'H1.IN and R1.2',
    '',
  ])('reads no pair in “%s”', (text) => {
    expect(read(text)).toBeNull();
  });
});
