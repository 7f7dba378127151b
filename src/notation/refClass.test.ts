import { expect, it } from 'vitest';
import { refClass } from './refClass.ts';

it.each([
  ['R1', 'resistor'],
  ['RN3', 'resistor'],
  ['C12', 'capacitor'],
  ['L1', 'inductor'],
  ['D1', 'diode'],
  ['LED3', 'led'],
  ['Q2', 'transistor'],
  ['U1', 'ic'],
  ['IC4', 'ic'],
  ['SW1', 'switch'],
  ['J1', 'connector'],
  ['F1', 'fuse'],
  ['Y1', 'crystal'],
  ['BT1', 'battery'],
  ['W1', 'wire'],
  ['MP1', 'mechanical'],
  ['r1', 'resistor'],
] as const)('takes %s for a %s', (ref, expected) => {
  expect(refClass(ref)).toBe(expected);
});
it.each(['H1', 'K1', 'M3', 'T1', 'X1', 'V1', 'ZZ1', 'R', '', 'constructor1', '1'])('has no class for “%s”', (ref) => {
  expect(refClass(ref)).toBeNull();
});
