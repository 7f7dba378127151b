import { createRequire } from 'node:module';
import type { Mat } from '@techstark/opencv-js';
import type { Homography } from '#imaging/geometry/homography.ts';
import type { ImagePoint } from '#imaging/geometry/points.ts';
import type { PointPair } from '#imaging/geometry/solveHomography.ts';
import type { Picture, Plane } from '#imaging/pixels/picture.ts';

// An `import` of a module that has a `then` of its own waits for ever; `require` does not look.
const cv: typeof import('@techstark/opencv-js') = createRequire(import.meta.url)('@techstark/opencv-js');

let started: Promise<void> | null = null;

/** Waits until the compiled library can be called. */
export function startOpenCv(): Promise<void> {
  started ??= new Promise((resolve) => {
    if (typeof cv.Mat === 'function') resolve();
    else cv.onRuntimeInitialized = () => resolve();
  });
  return started;
}

/** `getPerspectiveTransform`. */
export function openCvFour(pairs: readonly PointPair[]): Homography {
  const from = pointsMat(pairs.map((pair) => pair.from));
  const to = pointsMat(pairs.map((pair) => pair.to));
  const found = cv.getPerspectiveTransform(from, to);
  return emptied(found, from, to);
}

/** `findHomography` with least squares, or with RANSAC within so many pixels. */
export function openCvMany(pairs: readonly PointPair[], ransacWithin?: number): Homography {
  const from = pointsMat(pairs.map((pair) => pair.from));
  const to = pointsMat(pairs.map((pair) => pair.to));
  const mask = new cv.Mat();
  const found = cv.findHomography(from, to, ransacWithin === undefined ? 0 : cv.RANSAC, ransacWithin ?? 3, mask);
  return emptied(found, from, to, mask);
}

/** `warpPerspective` with WARP_INVERSE_MAP: the view takes points of the wanted picture to those of the given one. */
export function openCvWarp(picture: Picture, view: Homography, width: number, height: number): Uint8Array {
  const source = cv.matFromArray(picture.height, picture.width, cv.CV_8UC3, [...picture.rgb]);
  const target = new cv.Mat();
  const matrix = cv.matFromArray(3, 3, cv.CV_64F, [...view]);
  const flags = cv.INTER_LINEAR | cv.WARP_INVERSE_MAP;
  cv.warpPerspective(source, target, matrix, new cv.Size(width, height), flags, cv.BORDER_CONSTANT, new cv.Scalar());
  const bytes = Uint8Array.from(target.data);
  for (const mat of [source, target, matrix]) mat.delete();
  return bytes;
}

/** `findTransformECC` for a homography: from points of `template` to those of `input`. */
export function openCvEcc(template: Plane, input: Plane, start: Homography): Homography {
  const planes = [template, input].map(({ width, height, values }) =>
    cv.matFromArray(height, width, cv.CV_32F, [...values]),
  );
  const warp = cv.matFromArray(3, 3, cv.CV_32F, [...start]);
  const criteria = new cv.TermCriteria(cv.TermCriteria_COUNT | cv.TermCriteria_EPS, 200, 1e-7);
  const mask = new cv.Mat();
  const [first, second] = planes;
  if (!first || !second) throw new Error('two planes');
  cv.findTransformECC(first, second, warp, cv.MOTION_HOMOGRAPHY, criteria, mask, 5);
  const found = Array.from(warp.data32F);
  for (const mat of [first, second, warp, mask]) mat.delete();
  return toHomography(found);
}

function emptied(found: Mat, ...others: readonly Mat[]): Homography {
  const values = Array.from(found.data64F);
  for (const mat of [found, ...others]) mat.delete();
  return toHomography(values);
}

function pointsMat(points: readonly ImagePoint[]): Mat {
  return cv.matFromArray(
    points.length,
    1,
    cv.CV_32FC2,
    points.flatMap((point) => [point.column, point.row]),
  );
}

function toHomography(values: readonly number[]): Homography {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = values;
  return [a / i, b / i, c / i, d / i, e / i, f / i, g / i, h / i, 1];
}
