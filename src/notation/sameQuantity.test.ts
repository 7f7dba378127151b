import { expect, it } from 'vitest';
import { parseValue } from './parseValue.ts';
import { sameQuantity } from './sameQuantity.ts';

function same(a: string, b: string): boolean {
  const [one, other] = [parseValue(a), parseValue(b)];
  if (one === null || other === null) throw new Error(`no value: ${a}, ${b}`);
  return sameQuantity(one, other);
}

it('holds 4k7, 4.7 kΩ and 4700 Ω for one value', () => {
  expect([same('4k7', '4.7 kΩ'), same('4.7k', '4700 Ω'), same('0 Ω', '0R')]).toEqual([true, true, true]);
});
it('tells values apart that differ by one part in a thousand, and kinds however equal their numbers', () => {
  expect([same('1000 Ω', '1001 Ω'), same('5 V', '5 A'), same('5 V', '-5 V')]).toEqual([false, false, false]);
});
