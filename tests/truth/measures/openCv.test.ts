import { beforeAll, describe, expect, it } from 'vitest';
import { edgeWidths } from '#imaging/measures/edgeWidths.ts';
import { measureFocus } from '#imaging/measures/measureFocus.ts';
import { measureNoise } from '#imaging/measures/measureNoise.ts';
import { pyramidOf } from '#imaging/measures/pyramidOf.ts';
import { scharr } from '#imaging/measures/scharr.ts';
import { halved } from '#imaging/pixels/halved.ts';
import { lumaOf, luminanceOf, type Plane } from '#imaging/pixels/picture.ts';
import { matOf, openCv } from './openCv.ts';
import { randomFrom, randomPicture } from './randomPicture.ts';

let cv: Awaited<ReturnType<typeof openCv>>['cv'];
beforeAll(async () => {
  ({ cv } = await openCv());
});

/** Colour, wide and high, in the coded and in the linear form: luma mixes the channels with the weights that OpenCV is not asked for. */
const planes: [string, Plane][] = [
  ['wide, luma', lumaOf(randomPicture(96, 40, 1))],
  ['high, luma', lumaOf(randomPicture(38, 90, 2))],
  ['wide, luminance', luminanceOf(randomPicture(66, 54, 3))],
];

describe('differences', () => {
  it.each(planes)('are those of OpenCV at every place inside: %s', (_, plane) => {
    const source = matOf(plane);
    const [across, down] = [new cv.Mat(), new cv.Mat()];
    cv.Scharr(source, across, cv.CV_64F, 1, 0, 1 / 4);
    cv.Scharr(source, down, cv.CV_64F, 0, 1, 1 / 4);
    const ours = scharr(plane);
    let furthest = 0;
    for (let row = 1; row < plane.height - 1; row++) {
      for (let column = 1; column < plane.width - 1; column++) {
        const at = row * plane.width + column;
        const offAcross = Math.abs((across.data64F[at] ?? Number.NaN) - (ours.across[at] ?? Number.NaN));
        const offDown = Math.abs((down.data64F[at] ?? Number.NaN) - (ours.down[at] ?? Number.NaN));
        furthest = Math.max(furthest, offAcross, offDown);
      }
    }
    expect(furthest).toBeLessThan(2e-6);
  });
});

describe('pictures at half their size', () => {
  it.each(planes)('are those of OpenCV by area: %s', (_, plane) => {
    const small = new cv.Mat();
    cv.resize(matOf(plane), small, new cv.Size(plane.width / 2, plane.height / 2), 0, 0, cv.INTER_AREA);
    const ours = halved(plane);
    expect([ours.width, ours.height]).toEqual([small.cols, small.rows]);
    const off = Array.from(ours.values, (value, at) => Math.abs(value - (small.data64F[at] ?? Number.NaN)));
    expect(Math.max(...off)).toBeLessThan(1e-6);
  });
});

describe('noise', () => {
  it.each([2, 6, 12])('of %s codes agrees with the filter of Immerkær run by OpenCV over a flat picture', (sigma) => {
    const random = randomFrom(sigma);
    const [width, height] = [320, 208];
    const values = Float32Array.from({ length: width * height }, () => 0.5 + (sigma * random.normal()) / 255);
    const plane: Plane = { width, height, values, coding: 'gamma' };
    const mask = cv.matFromArray(3, 3, cv.CV_64F, [1, -2, 1, -2, 4, -2, 1, -2, 1]);
    const filtered = new cv.Mat();
    cv.filter2D(matOf(plane), filtered, cv.CV_64F, mask, new cv.Point(-1, -1), 0, cv.BORDER_REPLICATE);
    const inside = filtered.roi(new cv.Rect(1, 1, width - 2, height - 2)).clone();
    const mean = inside.data64F.reduce((sum, value) => sum + Math.abs(value), 0) / inside.data64F.length;
    const whole = 255 * Math.sqrt(Math.PI / 2) * (mean / 6);
    expect(Math.abs((measureNoise(pyramidOf(plane)).sigma ?? 0) / whole - 1)).toBeLessThan(0.05);
    expect(Math.abs(whole / sigma - 1)).toBeLessThan(0.05);
  });
});

describe('focus', () => {
  it.each([1, 1.5, 2, 3])('finds the σ of %s pixels by which OpenCV blurred the edges', (sigma) => {
    const { blur } = focusOf(blurredByOpenCv(squares(), sigma));
    expect(Math.abs((blur ?? 0) / sigma - 1)).toBeLessThan(0.2);
  });
  it('orders a series as the variance of the Laplacian does, which OpenCV takes', () => {
    const sigmas = [0.4, 0.6, 0.9, 1.3, 2, 3];
    const frames = sigmas.map((sigma) => blurredByOpenCv(squares(), sigma));
    const scores = frames.map((frame) => focusOf(frame).score ?? 0);
    const laplacians = frames.map((frame) => {
      const [result, mean, deviation] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
      cv.Laplacian(matOf(frame), result, cv.CV_64F);
      cv.meanStdDev(result, mean, deviation);
      return (deviation.data64F[0] ?? 0) ** 2;
    });
    const falling = (values: readonly number[]) => values.toSorted((a, b) => b - a);
    expect(laplacians).toEqual(falling(laplacians));
    expect(scores).toEqual(falling(scores));
  });
  it('is not taken in by noise, as the variance of the Laplacian is', () => {
    const random = randomFrom(4);
    const sharp = blurredByOpenCv(squares(), 0.5);
    const soft = blurredByOpenCv(squares(), 2.5);
    const values = soft.values.map((value) => value + (10 * random.normal()) / 255);
    const noisy = { ...soft, values };
    expect(focusOf(noisy).verdict).toBe('soft');
    expect(focusOf(sharp).verdict).toBe('sharp');
  });
});

function focusOf(plane: Plane) {
  const pyramid = pyramidOf(plane);
  return measureFocus(edgeWidths(pyramid, measureNoise(pyramid), null));
}

/** Squares of several greys, laid at several angles, some distance from each other. */
function squares(): Plane {
  const [width, height] = [640, 448];
  const values = new Float32Array(width * height).fill(0.25);
  for (let n = 0; n < 12; n++) {
    const [middleX, middleY] = [80 + (n % 4) * 160, 75 + Math.floor(n / 4) * 150];
    const [cosine, sine] = [Math.cos(n * 0.7), Math.sin(n * 0.7)];
    for (let row = 0; row < height; row++) {
      for (let column = 0; column < width; column++) {
        const [x, y] = [column - middleX, row - middleY];
        const inside = 40 - Math.max(Math.abs(x * cosine + y * sine), Math.abs(y * cosine - x * sine));
        // The rim in part, as a pixel sees it.
        const share = Math.min(1, Math.max(0, inside + 0.5));
        const at = row * width + column;
        values[at] = (values[at] ?? 0) + share * (0.2 + 0.05 * (n % 8));
      }
    }
  }
  return { width, height, values, coding: 'gamma' };
}

function blurredByOpenCv(plane: Plane, sigma: number): Plane {
  const result = new cv.Mat();
  cv.GaussianBlur(matOf(plane), result, new cv.Size(0, 0), sigma);
  return { ...plane, values: Float32Array.from(result.data64F) };
}
