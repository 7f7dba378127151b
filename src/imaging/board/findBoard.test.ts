import { expect, test } from 'vitest';
import { pictureFrom } from '../pixels/picture.ts';
import { findSubject } from '../subject/findSubject.ts';
import { findBoard } from './findBoard.ts';

type Point = readonly [number, number];
const corners: readonly Point[] = [
  [0.22, 0.3],
  [0.71, 0.21],
  [0.78, 0.7],
  [0.18, 0.76],
];

/** A board with pads, seen aslant on an even ground; without it, the ground alone. */
function scene(width: number, height: number, board: readonly Point[] | null) {
  const rgb = new Uint8Array(3 * width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const at: Point = [(column + 0.5) / width, (row + 0.5) / height];
      const isPad = column % 24 < 8 && row % 24 < 8;
      const light = 0.8 + (0.2 * column) / width;
      const colour = !(board && isInside(board, at)) ? [205, 198, 186] : isPad ? [200, 185, 140] : [24, 104, 62];
      for (const [channel, value] of colour.entries()) rgb[3 * (row * width + column) + channel] = value * light;
    }
  }
  return pictureFrom(width, height, rgb);
}

function isInside(outline: readonly Point[], [x, y]: Point): boolean {
  return outline.every(([ax, ay], n) => {
    const [bx, by] = outline[(n + 1) % outline.length] ?? [0, 0];
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0;
  });
}

test.each([
  [640, 400],
  [300, 420],
])('the corners of a board in a picture of %i × %i are found within two thirds of a pixel', (width, height) => {
  const found = findBoard(scene(width, height, corners))?.corners ?? [];
  const far = corners.map(([x, y], n) => {
    const [u, v] = found[n] ?? [9, 9];
    return Math.hypot((x - u) * width, (y - v) * height);
  });
  expect(Math.max(...far)).toBeLessThan(0.67);
});

test('a board that reaches out of the picture, and an even ground, are no board', () => {
  const cut = corners.map(([x, y]): Point => [x + 0.4, y]);
  expect(findBoard(scene(640, 400, cut))).toBeNull();
  expect(findBoard(scene(640, 400, null))).toBeNull();
});

test('the subject is the board, with or without its outline known, and the same each time', () => {
  const picture = scene(640, 400, corners);
  const exact = findSubject(picture, findBoard(picture));
  expect(overlap(exact.box, [0.18, 0.21, 0.6, 0.55])).toBeGreaterThan(0.98);
  const alone = findSubject(picture, null);
  expect(overlap(alone.box, [0.18, 0.21, 0.6, 0.55])).toBeGreaterThan(0.8);
  expect(findSubject(picture, null)).toEqual(alone);
  const { width, values } = alone.mask;
  expect(values[Math.round(0.5 * (values.length / width)) * width + Math.round(0.5 * width)]).toBeGreaterThan(0.5);
  expect(values[0]).toBe(0);
});

function overlap(one: readonly number[], other: readonly number[]): number {
  const [a = 0, b = 0, c = 0, d = 0] = one;
  const [e = 0, f = 0, g = 0, h = 0] = other;
  const wide = Math.min(a + c, e + g) - Math.max(a, e);
  const shared = wide * (Math.min(b + d, f + h) - Math.max(b, f));
  return shared / (c * d + g * h - shared);
}
