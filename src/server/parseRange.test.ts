import { expect, test } from 'vitest';
import { parseRange } from './parseRange.ts';

// RFC 9110 14.1.2 gives these forms for a file of 10000 bytes.
test.each<[string | undefined, number, ReturnType<typeof parseRange>]>([
  ['bytes=0-499', 10_000, [0, 499]],
  ['bytes=500-999', 10_000, [500, 999]],
  ['bytes=-500', 10_000, [9500, 9999]],
  ['bytes=9500-', 10_000, [9500, 9999]],
  ['bytes=0-0', 10_000, [0, 0]],
  ['bytes=0-99999', 10_000, [0, 9999]],
  ['bytes=-99999', 10_000, [0, 9999]],
  ['bytes=10000-', 10_000, 'unsatisfiable'],
  ['bytes=-0', 10_000, 'unsatisfiable'],
  ['bytes=0-', 0, 'unsatisfiable'],
  ['bytes=5-4', 10_000, null],
  ['bytes=0-0,-1', 10_000, null],
  ['bytes=-', 10_000, null],
  ['bytes=a-b', 10_000, null],
  ['lines=1-2', 10_000, null],
  [undefined, 10_000, null],
])('%s of %i bytes is %j', (header, size, expected) => {
  expect(parseRange(header, size)).toEqual(expected);
});
