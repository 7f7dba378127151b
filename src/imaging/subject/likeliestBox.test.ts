import { expect, test } from 'vitest';
import { seededRandom } from '../geometry/seededRandom.ts';
import { likeliestBox, overlapOf } from './likeliestBox.ts';

test('no other box of a small grid is expected to overlap more', () => {
  const [width, height] = [7, 5];
  for (let seed = 1; seed <= 40; seed++) {
    const random = seededRandom(seed);
    const chances = Float32Array.from({ length: width * height }, () => random() ** 2);
    let most = 0;
    for (let top = 0; top < height; top++) {
      for (let bottom = top + 1; bottom <= height; bottom++) {
        for (let left = 0; left < width; left++) {
          for (let right = left + 1; right <= width; right++) {
            most = Math.max(most, overlapOf(chances, width, { left, top, right, bottom }));
          }
        }
      }
    }
    expect(likeliestBox(chances, width, height).overlap).toBeCloseTo(most, 5);
  }
});

test('a plain rectangle of certain cells is found exactly', () => {
  const chances = Float32Array.from({ length: 96 }, (_, cell) => {
    const [column, row] = [cell % 12, Math.floor(cell / 12)];
    return column >= 3 && column < 8 && row >= 2 && row < 5 ? 1 : 0;
  });
  expect(likeliestBox(chances, 12, 8)).toEqual({ box: { left: 3, top: 2, right: 8, bottom: 5 }, overlap: 1 });
});
