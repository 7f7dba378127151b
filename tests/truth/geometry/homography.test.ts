import { beforeAll, describe, expect, it } from 'vitest';
import { applyHomography } from '#imaging/geometry/applyHomography.ts';
import { composeHomographies } from '#imaging/geometry/composeHomographies.ts';
import { boardPointOf, boardViewOf, flattenBoard, photoPointOf } from '#imaging/geometry/flattenBoard.ts';
import { type Homography, sameView } from '#imaging/geometry/homography.ts';
import { type Four, homographyOfFour } from '#imaging/geometry/homographyOfFour.ts';
import { invertHomography } from '#imaging/geometry/invertHomography.ts';
import type { ImagePoint } from '#imaging/geometry/points.ts';
import { resizeHomography } from '#imaging/geometry/resizeHomography.ts';
import { robustHomography } from '#imaging/geometry/robustHomography.ts';
import { seededRandom } from '#imaging/geometry/seededRandom.ts';
import { type PointPair, solveHomography } from '#imaging/geometry/solveHomography.ts';
import { warpPicture } from '#imaging/geometry/warpPicture.ts';
import { pictureFrom } from '#imaging/pixels/picture.ts';
import { openCvFour, openCvMany, openCvWarp, startOpenCv } from './openCv.ts';

const at = (column: number, row: number): ImagePoint => ({ column, row });
const square: Four = [at(0, 0), at(100, 0), at(100, 100), at(0, 100)];
const quad: Four = [at(10, 20), at(120, 10), at(110, 130), at(5, 115)];
const tilted: Homography = [0.91, -0.12, 31, 0.08, 1.07, -14, 2.1e-4, -1.3e-4, 1];

beforeAll(startOpenCv);

describe('the view that takes four points to four others', () => {
  // Reference values computed with getPerspectiveTransform of OpenCV 4.6, see SOURCE.md.
  const reference = [0.8458823529, -0.048627451, 10, -0.1211764706, 0.9815686275, 20, -0.0021176471, 0.0002745098, 1];

  it('is the one that OpenCV computes', () => {
    const view = known(homographyOfFour(square, quad));
    expect(apart(view, reference)).toBeLessThan(1e-9);
    expect(apart(view, openCvFour(pairsOf(square, quad)))).toBeLessThan(1e-9);
    expect(applyHomography(view, at(50, 50)).column).toBeCloseTo(54.92440605, 7);
    expect(applyHomography(view, at(25, 75)).row).toBeCloseTo(93.61702128, 7);
  });

  it('is the same by the linear transform', () => {
    expect(apart(known(solveHomography(pairsOf(square, quad))), reference)).toBeLessThan(1e-8);
  });

  it('stretches the unit square into a rectangle', () => {
    const unit: Four = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
    const view = known(homographyOfFour(unit, [at(0, 0), at(2, 0), at(2, 3), at(0, 3)]));
    expect(apart(view, [2, 0, 0, 0, 3, 0, 0, 0, 1])).toBeLessThan(1e-12);
  });

  it('does not exist where three points lie on a line', () => {
    const flat: Four = [at(0, 0), at(50, 50), at(100, 100), at(0, 100)];
    expect(homographyOfFour(flat, quad)).toBeNull();
    expect(homographyOfFour(quad, flat)).toBeNull();
    expect(solveHomography(pairsOf(flat, quad))).toBeNull();
  });
});

describe('views put together', () => {
  it('cancel out with their inverse', () => {
    const back = known(invertHomography(tilted));
    expect(apart(composeHomographies(back, tilted), sameView)).toBeLessThan(1e-12);
    expect(invertHomography([1, 2, 3, 2, 4, 6, 0, 0, 1])).toBeNull();
  });

  it('apply one after the other', () => {
    const turn: Homography = [0, -1, 40, 1, 0, 3, 0, 0, 1];
    const both = applyHomography(composeHomographies(turn, tilted), at(17, 5));
    const each = applyHomography(turn, applyHomography(tilted, at(17, 5)));
    expect(both.column).toBeCloseTo(each.column, 10);
    expect(both.row).toBeCloseTo(each.row, 10);
  });

  it('keep the edges of pictures in place when these are enlarged', () => {
    const shift: Homography = [1, 0, 10, 0, 1, 0, 0, 0, 1];
    const large = resizeHomography(shift, 4, 4);
    expect(applyHomography(large, at(-0.5, -0.5))).toEqual({
      column: expect.closeTo(39.5, 9),
      row: expect.closeTo(-0.5, 9),
    });
    const onlyTo = resizeHomography(sameView, 1, 2);
    expect(applyHomography(onlyTo, at(0, 0)).column).toBeCloseTo(0.5, 9);
  });
});

describe('the view that many pairs tell', () => {
  const random = seededRandom(5);
  const pairs = Array.from({ length: 60 }, () => {
    const from = at(random() * 640, random() * 300);
    const to = applyHomography(tilted, from);
    return { from, to: at(to.column + random() - 0.5, to.row + random() - 0.5) };
  });
  const wrong = Array.from({ length: 60 }, () => ({
    from: at(random() * 640, random() * 300),
    to: at(random() * 640, random() * 300),
  }));

  it('lies within hundredths of a pixel of what OpenCV solves', () => {
    expect(furthest(known(solveHomography(pairs)), openCvMany(pairs), 640, 300)).toBeLessThan(0.1);
  });

  it('is found though half of the pairs are wrong, as OpenCV finds it', () => {
    const found = known(robustHomography([...wrong, ...pairs], { within: 2 }));
    expect(found.inliers.filter((i) => i >= 60).length).toBe(60);
    expect(found.inliers.length).toBeLessThan(64);
    expect(furthest(found.homography, tilted, 640, 300)).toBeLessThan(0.6);
    expect(furthest(found.homography, openCvMany([...wrong, ...pairs], 2), 640, 300)).toBeLessThan(0.6);
  });

  it('is not made up from pairs that have nothing in common', () => {
    expect(robustHomography(wrong, { within: 2 })?.inliers.length ?? 0).toBeLessThan(9);
    expect(robustHomography(pairs.slice(0, 3))).toBeNull();
  });
});

describe('a warped picture', () => {
  const [width, height] = [61, 37];
  const rgb = new Uint8Array(3 * width * height);
  for (let i = 0; i < width * height; i++) {
    const [x, y] = [i % width, Math.floor(i / width)];
    rgb[3 * i] = Math.round(127 + 100 * Math.sin(x / 9));
    rgb[3 * i + 1] = Math.round(127 + 100 * Math.cos(y / 7));
    rgb[3 * i + 2] = Math.round(((x + 2 * y) / (width + 2 * height)) * 255);
  }
  const picture = pictureFrom(width, height, rgb);

  it('has the colours that OpenCV blends, in each channel', () => {
    const view: Homography = [0.9, 0.1, 3, -0.07, 0.95, 4, 4e-4, -3e-4, 1];
    const { picture: ours, covered } = warpPicture(picture, view, 52, 40);
    const theirs = openCvWarp(picture, view, 52, 40);
    const misses = Array.from(covered).flatMap((shown, i) =>
      shown
        ? [0, 1, 2].map((channel) => Math.abs((ours.rgb[3 * i + channel] ?? 0) - (theirs[3 * i + channel] ?? 0)))
        : [],
    );
    expect(misses.length).toBeGreaterThan(4500);
    // OpenCV rounds places to a 32nd of a pixel; the colours here change by at most 15 a pixel.
    expect(Math.max(...misses)).toBeLessThanOrEqual(1);
  });

  it('is black outside, and said to be so', () => {
    const { picture: moved, covered } = warpPicture(picture, [1, 0, -2, 0, 1, 0, 0, 0, 1], width, height);
    expect([...covered.subarray(0, 4)]).toEqual([0, 0, 1, 1]);
    expect([...moved.rgb.subarray(0, 9)]).toEqual([0, 0, 0, 0, 0, 0, ...picture.rgb.subarray(0, 3)]);
    expect(warpPicture(picture, sameView, width, height).picture.rgb).toEqual(picture.rgb);
  });
});

describe('a flattened board', () => {
  const corners: Four = [at(22, 10), at(130, 18), at(121, 92), at(15, 80)];
  const view = known(boardViewOf(corners, { width: 60, height: 45 }));

  it('has its corners where the photo shows them, y upwards', () => {
    const topRight = photoPointOf(view, { x: 60, y: 45 });
    expect(topRight).toEqual({ column: expect.closeTo(130, 9), row: expect.closeTo(18, 9) });
    expect(boardPointOf(view, at(15, 80))).toEqual({ x: expect.closeTo(0, 9), y: expect.closeTo(0, 9) });
    const there = boardPointOf(view, photoPointOf(view, { x: 12.7, y: 30.48 }));
    expect(there).toEqual({ x: expect.closeTo(12.7, 9), y: expect.closeTo(30.48, 9) });
  });

  it('is cut to scale: a mark at a place in millimetres comes to lie there', () => {
    const marked = new Uint8Array(3 * 160 * 100).fill(200);
    const spot = photoPointOf(view, { x: 20, y: 15 });
    for (let row = 0; row < 100; row++) {
      for (let column = 0; column < 160; column++) {
        if (Math.hypot(column - spot.column, row - spot.row) < 3) marked[3 * (row * 160 + column)] = 0;
      }
    }
    const flat = flattenBoard(pictureFrom(160, 100, marked), view, 4);
    expect([flat.width, flat.height]).toEqual([240, 180]);
    const dark = Array.from({ length: 240 * 180 }, (_, i) => i).filter((i) => (flat.rgb[3 * i] ?? 255) < 100);
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(dark.map((i) => (i % 240) + 0.5)) / 4).toBeCloseTo(20, 0);
    expect(45 - mean(dark.map((i) => Math.floor(i / 240) + 0.5)) / 4).toBeCloseTo(15, 0);
  });
});

function pairsOf(from: Four, to: Four): readonly PointPair[] {
  return from.map((point, i) => ({ from: point, to: to[i] ?? point }));
}

function apart(a: readonly number[], b: readonly number[]): number {
  return Math.max(...a.map((value, i) => Math.abs(value - (b[i] ?? 0))));
}

function furthest(a: Homography, b: Homography, width: number, height: number): number {
  const corners = [at(0, 0), at(width, 0), at(width, height), at(0, height)];
  return Math.max(
    ...corners.map((corner) => {
      const [p, q] = [applyHomography(a, corner), applyHomography(b, corner)];
      return Math.hypot(p.column - q.column, p.row - q.row);
    }),
  );
}

function known<T>(value: T | null): T {
  if (value === null) throw new Error('expected an answer, received none');
  return value;
}
