import { expect, it } from 'vitest';
import { scaleBarOf } from './scaleBarOf.ts';

it('is the longest of the usual lengths that half the board has room for', () => {
  expect([60, 39, 20, 210, 1.5, 5].map((width) => scaleBarOf(width))).toEqual([
    { millimetres: 20, parts: 4 },
    { millimetres: 10, parts: 5 },
    { millimetres: 10, parts: 5 },
    { millimetres: 100, parts: 5 },
    { millimetres: 0.5, parts: 5 },
    { millimetres: 2, parts: 4 },
  ]);
});
