import { seededRandom } from '../geometry/seededRandom.ts';
import type { Plane } from '../pixels/picture.ts';
import { blurPlane } from './blurPlane.ts';
import { findCorners } from './findCorners.ts';
import { resizePlane } from './resizePlane.ts';

/** Corners of a picture with 256 bits each that say how their surroundings look. */
export interface Features {
  readonly count: number;
  /** In pixels of the plane that they were found in, whatever the scale. */
  readonly columns: Float32Array;
  readonly rows: Float32Array;
  /** Eight words a corner. */
  readonly words: Uint32Array;
}

/** How far a test reaches from the corner, in pixels of its scale. */
const reach = 13;
const margin = reach + 2;
/** Each scale is so many times coarser than the one before; five of them reach to a quarter. */
const factor = Math.SQRT2;
const scales = 5;
const turns = 36;
const tests = 256;

/** For each of 36 turns and each test the offsets of two pixels: column, row, column, row. */
const pattern = turnedPattern();

/**
 * Corners on five scales with descriptors: 256 comparisons of two blurred pixels each, of a fixed pattern drawn from a
 * Gaussian and turned to where the patch is brightest (after M. Calonder et al., "BRIEF", ECCV 2010, and E. Rublee et
 * al., "ORB", ICCV 2011; the pattern is our own). They stay the same when light gets stronger or weaker.
 */
export function findFeatures(luma: Plane): Features {
  const columns: number[] = [];
  const rows: number[] = [];
  const words: number[] = [];
  for (let scale = 0; scale < scales; scale++) {
    const by = factor ** scale;
    const width = Math.round(luma.width / by);
    const height = Math.round(luma.height / by);
    if (Math.min(width, height) < 3 * margin) break;
    const plane = stretched(blurPlane(resizePlane(luma, width, height), 1));
    const smooth = blurPlane(plane, 1.2);
    const each = scale === 0 ? 8 : 5;
    for (const { column, row } of findCorners(plane, { margin, contrast: 0.04, cells: 8, each })) {
      columns.push(((column + 0.5) * luma.width) / width - 0.5);
      rows.push(((row + 0.5) * luma.height) / height - 0.5);
      describe(smooth, column, row, words);
    }
  }
  return {
    count: columns.length,
    columns: Float32Array.from(columns),
    rows: Float32Array.from(rows),
    words: Uint32Array.from(words),
  };
}

/** Contrast so that the middle 96 % of the values span 0 to 1. */
function stretched(plane: Plane): Plane {
  const sample = plane.values.filter((_, i) => i % 7 === 0).sort();
  const low = sample[Math.floor(0.02 * sample.length)] ?? 0;
  const high = sample[Math.floor(0.98 * sample.length)] ?? 1;
  const span = Math.max(high - low, 0.02);
  return { ...plane, values: plane.values.map((value) => (value - low) / span) };
}

function describe({ values, width }: Plane, column: number, row: number, words: number[]): void {
  const at = row * width + column;
  const start = turnOf(values, width, at) * tests * 4;
  for (let word = 0; word < tests / 32; word++) {
    let bits = 0;
    for (let bit = 0; bit < 32; bit++) {
      const i = start + 4 * (32 * word + bit);
      const first = values[at + (pattern[i] ?? 0) + (pattern[i + 1] ?? 0) * width] ?? 0;
      const second = values[at + (pattern[i + 2] ?? 0) + (pattern[i + 3] ?? 0) * width] ?? 0;
      if (first < second) bits |= 1 << bit;
    }
    words.push(bits >>> 0);
  }
}

/** Towards the centre of mass of the light in a disc (P. Rosin, CVIU 73, 1999), in steps of ten degrees. */
function turnOf(values: Float32Array, width: number, at: number): number {
  let across = 0;
  let down = 0;
  for (let dr = -reach; dr <= reach; dr++) {
    const half = Math.floor(Math.sqrt(reach * reach - dr * dr));
    for (let dc = -half; dc <= half; dc++) {
      const value = values[at + dr * width + dc] ?? 0;
      across += dc * value;
      down += dr * value;
    }
  }
  return (Math.round((Math.atan2(down, across) / (2 * Math.PI)) * turns) + turns) % turns;
}

function turnedPattern(): Int8Array {
  const random = seededRandom(256);
  const spread = reach / 2.5;
  const points = Array.from({ length: 2 * tests }, () => {
    for (;;) {
      const distance = spread * Math.sqrt(-2 * Math.log(1 - random()));
      const angle = 2 * Math.PI * random();
      if (distance <= reach - 0.5) return { distance, angle };
    }
  });
  return Int8Array.from(
    Array.from({ length: turns }, (_, turn) =>
      points.flatMap(({ distance, angle }) => {
        const turned = angle + (2 * Math.PI * turn) / turns;
        return [Math.round(distance * Math.cos(turned)), Math.round(distance * Math.sin(turned))];
      }),
    ).flat(),
  );
}
