import { beforeAll, describe, expect, it } from 'vitest';
import { alignPictures } from '#imaging/alignment/alignPictures.ts';
import { blurPlane } from '#imaging/alignment/blurPlane.ts';
import { evenLight } from '#imaging/alignment/evenLight.ts';
import { landmarksOf, refineHomography } from '#imaging/alignment/refineHomography.ts';
import { applyHomography } from '#imaging/geometry/applyHomography.ts';
import { composeHomographies } from '#imaging/geometry/composeHomographies.ts';
import { type Homography, sameView } from '#imaging/geometry/homography.ts';
import { invertHomography } from '#imaging/geometry/invertHomography.ts';
import { warpPicture } from '#imaging/geometry/warpPicture.ts';
import { changedRegions } from '#imaging/likeness/changedRegions.ts';
import { comparableOf, likenessOf } from '#imaging/likeness/likenessOf.ts';
import { lumaOf, type Picture } from '#imaging/pixels/picture.ts';
import { boxOf, frameOf, renderScene, sceneOf, viewOf } from '../../../bench/alignment/boardScene.ts';
import { openCvEcc, startOpenCv } from './openCv.ts';

const { board, parts } = sceneOf(3);
const frame = frameOf(board, 1, 0.5, 480, 360);
const taken = renderScene(board, parts.slice(0, 4), frame);
/** Turned by six degrees, smaller, from a little aside. */
const moved: Homography = [0.98, -0.1, 24, 0.11, 0.97, -12, 5e-5, -4e-5, 1];

beforeAll(startOpenCv);

describe('two pictures laid over one another', () => {
  it('fit to a fraction of a pixel where one is a known warp of the other, in other light', () => {
    const { picture } = warpPicture(taken, moved, 440, 330);
    const found = alignPictures(taken, inOtherLight(picture));
    expect(furthest(found?.homography, moved, 440, 330)).toBeLessThan(0.5);
    expect(found?.confidence).toBeGreaterThan(0.9);
    expect(found?.inliers).toBeGreaterThan(30);
  });

  it('fit where the camera moved round a board with parts that stand up', () => {
    const other = frameOf(board, 2, 0.5, 480, 360);
    const found = alignPictures(taken, renderScene(board, parts.slice(0, 4), other));
    const back = invertHomography(viewOf(board, other));
    const truth = back && composeHomographies(viewOf(board, frame), back);
    expect(furthest(found?.homography, truth, 480, 360)).toBeLessThan(1.5);
  });

  it('are told apart where they show different boards', () => {
    const other = sceneOf(8);
    const view = frameOf(other.board, 1, 0.5, 480, 360);
    expect(alignPictures(taken, renderScene(other.board, other.parts.slice(0, 4), view))).toBeNull();
  });

  it('are refined to where OpenCV’s findTransformECC refines them', () => {
    const { picture } = warpPicture(taken, moved, 480, 360);
    const [first, second] = [blurPlane(lumaOf(taken), 1), blurPlane(lumaOf(picture), 1)];
    const start = composeHomographies([1, 0, 2.2, 0, 1, -1.7, 0, 0, 1], moved);
    const ours = refineHomography(landmarksOf(evenLight(second, 12)), evenLight(first, 12), start);
    // ECC counts what lies outside as black unless it is masked: compared on the part that both show.
    const theirs = openCvEcc(second, first, start);
    expect(furthest(theirs, moved, 480, 360)).toBeLessThan(1);
    expect(furthest(ours, moved, 480, 360)).toBeLessThan(0.3);
    expect(furthest(ours, start, 480, 360)).toBeGreaterThan(2);
  });
});

describe('what changed between two pictures', () => {
  const later = frameOf(board, 4, 0.5, 480, 360);
  it('is the part that was fitted, and nothing else', () => {
    const after = renderScene(board, parts.slice(0, 5), later);
    const found = alignPictures(after, taken);
    const regions = changedRegions(after, taken, found?.homography ?? sameView) ?? [];
    const [part] = parts.slice(4);
    if (!part) throw new Error('a fifth part');
    const box = boxOf(part, board, later);
    expect(regions).toHaveLength(1);
    const [ring] = regions;
    expect(Math.abs((ring?.box.column ?? 0) - box.column)).toBeLessThan(8);
    expect(Math.abs((ring?.box.row ?? 0) - box.row)).toBeLessThan(8);
    expect(Math.abs((ring?.box.width ?? 0) - box.width)).toBeLessThan(14);
    expect(Math.abs((ring?.box.height ?? 0) - box.height)).toBeLessThan(14);
    expect(likenessOf(comparableOf(after), comparableOf(taken)).kind).toBe('progress');
  });

  it('is nothing where only camera, light and noise differ', () => {
    const again = renderScene(board, parts.slice(0, 4), later);
    const likeness = likenessOf(comparableOf(again), comparableOf(taken));
    expect(likeness).toMatchObject({ kind: 'same', changes: [] });
  });
});

/** Half a stop darker, warmer, and with a light from the left. */
function inOtherLight(picture: Picture): Picture {
  const rgb = picture.rgb.map((code, i) => {
    const across = (Math.floor(i / 3) % picture.width) / picture.width;
    return Math.round(code * 0.8 * (1.1 - 0.3 * across) * ([1.05, 1, 0.85][i % 3] ?? 1));
  });
  return { ...picture, rgb };
}

function furthest(
  a: Homography | null | undefined,
  b: Homography | null | undefined,
  width: number,
  height: number,
): number {
  if (!a || !b) return Number.POSITIVE_INFINITY;
  const misses = [0, width].flatMap((column) =>
    [0, height].map((row) => {
      const [p, q] = [applyHomography(a, { column, row }), applyHomography(b, { column, row })];
      return Math.hypot(p.column - q.column, p.row - q.row);
    }),
  );
  return Math.max(...misses);
}
