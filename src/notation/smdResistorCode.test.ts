import { expect, it } from 'vitest';
import { parseSmdResistorCode } from './smdResistorCode.ts';

it.each([
  ['R47', 0.47],
  ['R047', 0.047],
  ['4R7', 4.7],
  ['100', 10],
  ['4990', 499],
])('reads %s as %d Ω', (code, ohms) => {
  expect(parseSmdResistorCode(code)?.si).toBe(ohms);
});
it.each(['', '00', '47', '010', '108', '109', '10022', '01A', 'R', 'R4', '10k', '00000'])(
  'reads no code in “%s”',
  (text) => {
    expect(parseSmdResistorCode(text)).toBeNull();
  },
);
