import { expect, it } from 'vitest';
import { sittingsOf } from './sittingsOf.ts';

it('a pause of more than an hour and a half ends a sitting', () => {
  const hour = 3600;
  expect(sittingsOf([30 * hour, 0, 1.5 * hour, 30.2 * hour, 3.01 * hour])).toEqual([[1, 2], [4], [0, 3]]);
  expect(sittingsOf([0, 100, 300], 150)).toEqual([[0, 1], [2]]);
  expect(sittingsOf([])).toEqual([]);
});
