import { describe, expect, it } from 'vitest';
import { chipNamedIn } from '../../../src/checks/busAddresses.ts';
import sources from './addresses.json';

/** `0x40 - 0x4F` is a range; anything else is a list. */
function addressesIn(printed: string): number[] {
  const numbers = (printed.match(/0x[0-9A-F]{2}/g) ?? []).map(Number).sort((a, b) => a - b);
  const [first = 0, last = 0] = numbers;
  return / - /.test(printed) ? Array.from({ length: last - first + 1 }, (_, i) => first + i) : numbers;
}

describe('addresses of chips against published lists', () => {
  it.each([...Object.entries(sources.list), ...Object.entries(sources.second)])('%s answers at %s', (name, printed) => {
    expect(chipNamedIn(name)?.addresses).toEqual(addressesIn(printed));
  });
  it.each(Object.entries(sources.third))('%s can be searched at %s', (name, printed) => {
    expect(chipNamedIn(name)?.addresses).toEqual(expect.arrayContaining(addressesIn(printed)));
  });
});
