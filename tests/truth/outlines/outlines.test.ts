import { createRequire } from 'node:module';
import { beforeAll, expect, test } from 'vitest';
import { closedMask } from '#imaging/board/closedMask.ts';
import { lineAlong } from '#imaging/board/lines.ts';
import { regionsOf } from '#imaging/board/regionsOf.ts';
import { areaWithin, convexHull } from '#imaging/geometry/convexHull.ts';
import { seededRandom } from '#imaging/geometry/seededRandom.ts';
import { blurred } from '#imaging/pixels/blurred.ts';
import { startOpenCv } from '../geometry/openCv.ts';

// An `import` of a module that has a `then` of its own waits for ever; `require` does not look.
const cv: typeof import('@techstark/opencv-js') = createRequire(import.meta.url)('@techstark/opencv-js');
const [width, height] = [53, 37];

beforeAll(startOpenCv);

/** Blots: noise, smoothed and cut at its mean. */
function blots(seed: number): Uint8Array {
  const random = seededRandom(seed);
  const noise = Float32Array.from({ length: width * height }, () => random());
  return Uint8Array.from(blurred(noise, width, height, 1.2), (value) => (value > 0.5 ? 1 : 0));
}

test('masks are closed and opened as OpenCV does it', () => {
  for (const [seed, radius] of [
    [1, 1],
    [2, 2],
    [3, 4],
  ] as const) {
    const mask = blots(seed);
    const from = cv.matFromArray(height, width, cv.CV_8UC1, [...mask]);
    const kernel = cv.getStructuringElement(cv.MORPH_RECT, new cv.Size(2 * radius + 1, 2 * radius + 1));
    const to = new cv.Mat();
    cv.morphologyEx(from, to, cv.MORPH_CLOSE, kernel);
    cv.morphologyEx(to, to, cv.MORPH_OPEN, kernel);
    expect([...closedMask(mask, width, height, radius)]).toEqual([...to.data]);
    for (const each of [from, kernel, to]) each.delete();
  }
});

test('a mask falls into the same regions as OpenCV finds', () => {
  const mask = blots(4);
  const from = cv.matFromArray(height, width, cv.CV_8UC1, [...mask]);
  const [labels, stats, centres] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
  const count = cv.connectedComponentsWithStats(from, labels, stats, centres, 4, cv.CV_32S);
  const areas = Array.from({ length: count - 1 }, (_, n) => stats.intAt(n + 1, cv.CC_STAT_AREA));
  const found = regionsOf(mask, width, height, 1).map(({ area }) => area);
  expect(found.length).toBeGreaterThan(3);
  expect(found.toSorted((a, b) => a - b)).toEqual(areas.toSorted((a, b) => a - b));
  for (const each of [from, labels, stats, centres]) each.delete();
});

test('a convex outline has the corners and the area of OpenCV’s', () => {
  const random = seededRandom(5);
  const points = Array.from({ length: 60 }, () => ({
    column: Math.floor(90 * random()),
    row: Math.floor(40 * random()),
  }));
  const from = cv.matFromArray(
    points.length,
    1,
    cv.CV_32SC2,
    points.flatMap(({ column, row }) => [column, row]),
  );
  const hull = new cv.Mat();
  cv.convexHull(from, hull);
  const outline = convexHull(points);
  expect(areaWithin(outline)).toBeCloseTo(cv.contourArea(hull), 6);
  expect(outline.length).toBe(hull.rows);
  for (const each of [from, hull]) each.delete();
});

test('a line along points, of which some lie elsewhere, is that of OpenCV, nearly', () => {
  const random = seededRandom(6);
  const points = Array.from({ length: 40 }, (_, n) => ({
    column: 3 * n,
    row: 20 + 0.4 * 3 * n + (n % 8 === 0 ? 15 : random() - 0.5),
  }));
  const from = cv.matFromArray(
    points.length,
    1,
    cv.CV_32FC2,
    points.flatMap(({ column, row }) => [column, row]),
  );
  const fitted = new cv.Mat();
  cv.fitLine(from, fitted, cv.DIST_HUBER, 0, 0.001, 0.001);
  const [along = 0, downwards = 0] = fitted.data32F;
  const line = lineAlong(points, 1);
  expect(Math.abs((line?.across ?? 0) * along + (line?.down ?? 0) * downwards)).toBeLessThan(0.01);
  expect((20 * (line?.down ?? 0) - (line?.offset ?? 0)) / (line?.down ?? 1)).toBeCloseTo(0, 0);
  for (const each of [from, fitted]) each.delete();
});
