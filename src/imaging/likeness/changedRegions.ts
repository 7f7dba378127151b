import { agreementOf } from '../alignment/agreementOf.ts';
import { blurPlane } from '../alignment/blurPlane.ts';
import { evenLight } from '../alignment/evenLight.ts';
import { landmarksOf } from '../alignment/refineHomography.ts';
import { sizeWithin } from '../alignment/resizePlane.ts';
import { convexHull } from '../geometry/convexHull.ts';
import { type Homography, sameView } from '../geometry/homography.ts';
import { invertHomography } from '../geometry/invertHomography.ts';
import type { ImagePoint } from '../geometry/points.ts';
import { resizeHomography } from '../geometry/resizeHomography.ts';
import { warpPlane } from '../geometry/warpPlane.ts';
import { luminanceWeights, type Picture, type Plane } from '../pixels/picture.ts';
import { differenceOf } from './differenceOf.ts';
import { isMoved } from './isMoved.ts';
import { isShadow } from './isShadow.ts';
import { type Channels, channelsOf, matchLight } from './matchLight.ts';
import { matchSharpness } from './matchSharpness.ts';
import { type Region, regionsOf } from './regionsOf.ts';

/** Longest side at which pictures are compared, in pixels. */
const side = 512;

/**
 * Where two pictures of one thing differ, as upright boxes in pixels of the first, the largest first. `homography` takes
 * points of the second to those of the first. The sharper picture is blurred as the other is, light is evened out place
 * by place and channel by channel, places may be seen up to two pixels off (of 512), and what differs by more than the
 * noise, the texture and the rest of the picture explain is joined into regions, shadows and what is only seen from
 * another side left out. Only the part of the picture that moves
 * as the homography says is compared: within the hull of the fields that agree, or within the corners of the board in the first where they
 * are known. Null where too little of it does.
 */
export function changedRegions(
  first: Picture,
  second: Picture,
  homography: Homography,
  within?: readonly ImagePoint[],
): readonly Region[] | null {
  const size = sizeWithin(first, side);
  const factor = first.width / size.width;
  const smaller = channelsOf(first, size.width, size.height);
  const other = sizeWithin(second, side);
  const view = invertHomography(resizeHomography(homography, other.width / second.width, size.width / first.width));
  if (!view) return null;
  const { channels: seen, covered } = seenThrough(view, channelsOf(second, other.width, other.height), smaller);
  const outline = within
    ? convexHull(within.map(({ column, row }) => ({ column: column / factor, row: row / factor })))
    : agreeingOutline(smaller, seen);
  const compared = outline && comparedOf(smaller, outline, covered);
  if (!compared) return null;
  const { first: one, second: two, steps } = matchSharpness(...matchLight(smaller, seen, compared), compared);
  const { difference, contrast } = differenceOf(one, two, compared, steps);
  const isMeant = (pixels: readonly number[]) => !isShadow(pixels, one, two, contrast) && !isMoved(pixels, one, two);
  return regionsOf(difference, size.width, size.height, isMeant).map((region) => enlarged(region, factor));
}

function enlarged({ box, area }: Region, factor: number): Region {
  const { column, row, width, height } = box;
  return {
    box: { column: column * factor, row: row * factor, width: width * factor, height: height * factor },
    area: area * factor * factor,
  };
}

/** The second picture through the view, with the first one's pixels where it shows nothing: no edge stands there. */
function seenThrough(view: Homography, { width, height, planes }: Channels, first: Channels) {
  const covered = new Uint8Array(first.width * first.height);
  const seen = (which: 0 | 1 | 2) => {
    const values = warpPlane({ width, height, values: planes[which] }, view, first.width, first.height);
    return values.map((value, at) => {
      if (Number.isNaN(value)) return first.planes[which][at] ?? 0;
      covered[at] = 1;
      return value;
    });
  };
  const channels: Channels = { width: first.width, height: first.height, planes: [seen(0), seen(1), seen(2)] };
  return { channels, covered };
}

/** The hull of the middles of the fields that agree; null where hardly any do. */
function agreeingOutline(first: Channels, second: Channels): readonly ImagePoint[] | null {
  const { fields, columns, field } = agreementOf(levelOf(second), levelOf(first), sameView);
  const middles = mainFields(fields, columns).map((i) => ({
    column: ((i % columns) + 0.5) * field,
    row: (Math.floor(i / columns) + 0.5) * field,
  }));
  return middles.length < 10 ? null : convexHull(middles);
}

/** Pixels that are compared: 1 within the outline and in view of both. */
function comparedOf({ width, height }: Channels, hull: readonly ImagePoint[], covered: Uint8Array): Uint8Array {
  const compared = new Uint8Array(width * height);
  for (let row = 2; row < height - 2; row++) {
    const span = spanAt(hull, row);
    if (!span) continue;
    for (let column = Math.max(2, Math.ceil(span[0])); column <= Math.min(width - 3, span[1]); column++) {
      const at = row * width + column;
      const corner = [at - 2 * width - 2, at - 2 * width + 2, at + 2 * width - 2, at + 2 * width + 2];
      if (corner.every((i) => covered[i] === 1)) compared[at] = 1;
    }
  }
  return compared;
}

/** Fields that agree and touch, in groups: the largest group and those at least a quarter as large. */
function mainFields(fields: Float32Array, columns: number): readonly number[] {
  const left = new Set(Array.from(fields.keys()).filter((i) => (fields[i] ?? Number.NaN) > 0.5));
  const groups: number[][] = [];
  for (const start of left) {
    left.delete(start);
    const group = [start];
    for (let i = 0; i < group.length; i++) {
      const at = group[i] ?? 0;
      for (const next of left) {
        const far = Math.abs((next % columns) - (at % columns)) > 1;
        if (far || Math.abs(Math.floor(next / columns) - Math.floor(at / columns)) > 1) continue;
        left.delete(next);
        group.push(next);
      }
    }
    groups.push(group);
  }
  const largest = Math.max(0, ...groups.map((group) => group.length));
  return groups.filter((group) => 4 * group.length >= largest).flat();
}

function levelOf({ width, height, planes }: Channels) {
  const [red, green, blue] = planes;
  const values = new Float32Array(width * height);
  for (let i = 0; i < values.length; i++) {
    values[i] =
      luminanceWeights[0] * (red[i] ?? 0) +
      luminanceWeights[1] * (green[i] ?? 0) +
      luminanceWeights[2] * (blue[i] ?? 0);
  }
  const luma: Plane = blurPlane({ width, height, values, coding: 'gamma' }, 1);
  return { luma, even: evenLight(luma, 18), landmarks: landmarksOf(luma) };
}

/** First and last column of a convex outline at a row; null above and below it. */
function spanAt(hull: readonly ImagePoint[], row: number): readonly [number, number] | null {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < hull.length; i++) {
    const [p, q] = [hull[i], hull[(i + 1) % hull.length]];
    if (!p || !q || (row < p.row && row < q.row) || (row > p.row && row > q.row)) continue;
    const along =
      p.row === q.row ? [p.column, q.column] : [p.column + ((row - p.row) * (q.column - p.column)) / (q.row - p.row)];
    low = Math.min(low, ...along);
    high = Math.max(high, ...along);
  }
  return high >= low ? [low, high] : null;
}
