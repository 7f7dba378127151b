import { expect, test } from 'vitest';
import { formatMinutes, formatWork } from './formatMinutes.ts';

test.each([
  [0, '0 min'],
  [25, '25 min'],
  [60, '1 h'],
  [65, '1 h 5 min'],
  [1440, '24 h'],
  [4320, '3 days'],
  [4380, '73 h'],
])('%d minutes are written as %s', (minutes, words) => expect(formatMinutes(minutes)).toBe(words));

test('waiting is told apart from work', () => {
  expect(formatWork({ hands: 10, wait: 0 })).toBe('10 min');
  expect(formatWork({ hands: 10, wait: 120 })).toBe('10 min by hand, then 2 h of waiting');
  expect(formatWork({ hands: 0, wait: 120 })).toBe('2 h of waiting');
});
