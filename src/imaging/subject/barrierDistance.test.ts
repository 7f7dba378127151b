import { expect, test } from 'vitest';
import { barrierDistance } from './barrierDistance.ts';

test('a slope has no barrier, however steep, and a thing on it stands out by its contrast', () => {
  const [width, height] = [9, 7];
  const slope = Float32Array.from({ length: width * height }, (_, cell) => 10 * (cell % width));
  expect(Math.max(...barrierDistance(slope, width, height))).toBe(0);
  const middle = 3 * width + 4;
  // Its lower contrast is to the right, where the way then leads straight up.
  slope[middle] = 100;
  const distance = barrierDistance(slope, width, height);
  expect(distance[middle]).toBe(50);
  expect(distance[middle + 1]).toBe(0);
});

test('a ring shields what it encloses, in a picture wider than high', () => {
  const [width, height] = [11, 7];
  const values = Float32Array.from({ length: width * height }, (_, cell) => {
    const [column, row] = [cell % width, Math.floor(cell / width)];
    const isEdge = column === 3 || column === 7 || row === 2 || row === 4;
    return isEdge && column >= 3 && column <= 7 && row >= 2 && row <= 4 ? 25 : 5;
  });
  expect(barrierDistance(values, width, height)[3 * width + 5]).toBe(20);
});
