import type { Box } from '#core/place.ts';
import type { Plane } from '../pixels/picture.ts';
import type { Noise } from './measureNoise.ts';
import type { Pyramid } from './pyramidOf.ts';
import { quantileOf } from './quantileOf.ts';

/** Widths of the edges that run one way, in one tile of the picture. */
export interface EdgeWidth {
  /** Across the edges, in radians from the row's direction, 0 to π. */
  readonly across: number;
  /**
   * Square of the standard deviation of the blur across the edges, in pixels of the full size. Down to −5/12 where there
   * is finer detail than one edge.
   */
  readonly variance: number;
  /** Places of 4 × 4 pixels that the edges were seen at. */
  readonly count: number;
}

/** Sides of a tile, in pixels of the quarter size. */
const tileSide = 16;
/** Ways that edges are sorted into. */
const ways = 8;
/** Fewer places than this in a tile tell nothing. */
const fewest = 8;
/** A change over 8 pixels by fewer code values than this is shading, not an edge. */
const faintest = 5 / 255;
/** And it stands this many times above what noise makes. */
const aboveNoise = 5;
/** And this share of the changes that the stronger edges make: grain of wood and shadows are softer than what lies on them. */
const besideStrong = 0.3;
/** Variance of what a pixel and a central difference add to the width of an edge: 1/12 and 1/3 of a pixel squared. */
export const ownVariance = 5 / 12;
/** Blur up to the first of these, in pixels, is told from the larger sizes, blur from the second on from the smaller ones. */
const [fromLarger, fromSmaller] = [2, 3];

/**
 * How wide edges are. For an edge that a blur of standard deviation σ has widened, the energy of the gradient across it
 * goes with 1/√(σ² + s²), where s is what the size of the pixels adds; so two sizes of the same picture tell σ² =
 * (s₂² − R² s₁²) / (R² − 1) from the ratio R of their energies (after S. Zhuo and T. Sim, Pattern Recognition 44(9), 2011,
 * who blur again in place of making smaller). Energy that noise makes is taken off first. Edges are looked for at a
 * quarter of the size, where noise and small blur change them least.
 */
export function edgeWidths(pyramid: Pyramid, { floors }: Noise, box: Box | null): EdgeWidth[] {
  const quarter = pyramid[2];
  const { width, height, values } = quarter;
  const [left, right] = insideOf(box?.x ?? 0, box?.width ?? 1, width);
  const [top, bottom] = insideOf(box?.y ?? 0, box?.height ?? 1, height);
  const tilesAcross = Math.ceil(width / tileSide);
  const tallies = new Map<number, Tally>();
  const least = Math.max(faintest ** 2, aboveNoise ** 2 * (floors[1] / 2));
  const energies = new Float32Array(values.length);
  const strong: number[] = [];
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) {
      const at = row * width + column;
      const across = (values[at + 1] ?? 0) - (values[at - 1] ?? 0);
      const down = (values[at + width] ?? 0) - (values[at - width] ?? 0);
      const energy = across * across + down * down;
      energies[at] = energy;
      if (energy >= least) strong.push(energy);
    }
  }
  if (strong.length === 0) return [];
  const threshold = Math.max(least, besideStrong ** 2 * quantileOf(strong, 0.9));
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) {
      const at = row * width + column;
      const energy = energies[at] ?? 0;
      if (energy < threshold) continue;
      const across = (values[at + 1] ?? 0) - (values[at - 1] ?? 0);
      const down = (values[at + width] ?? 0) - (values[at - width] ?? 0);
      const strength = Math.sqrt(energy);
      const angle = (Math.atan2(down, across) + Math.PI) % Math.PI;
      const way = Math.round((angle * ways) / Math.PI) % ways;
      const tile = (Math.floor(row / tileSide) * tilesAcross + Math.floor(column / tileSide)) * ways + way;
      let tally = tallies.get(tile);
      if (tally === undefined) {
        tally = { way, count: 0, energies: new Float64Array(4) };
        tallies.set(tile, tally);
      }
      addEnergies(tally, pyramid, column, row, across / strength, down / strength);
    }
  }
  return [...tallies.values()].filter(({ count }) => count >= fewest).map((tally) => widthOf(tally, floors));
}

interface Tally {
  readonly way: number;
  count: number;
  readonly energies: Float64Array;
}

/** First and behind the last place to look at, so that all sizes have neighbours there. */
function insideOf(from: number, share: number, size: number): [number, number] {
  return [Math.max(2, Math.floor(from * size)), Math.min(size - 3, Math.ceil((from + share) * size))];
}

function addEnergies(
  tally: Tally,
  [full, half, quarter, eighth]: Pyramid,
  column: number,
  row: number,
  cosine: number,
  sine: number,
): void {
  tally.count++;
  const { energies } = tally;
  energies[0] = (energies[0] ?? 0) + energyIn(full, 4 * column, 4 * row, 4, cosine, sine);
  energies[1] = (energies[1] ?? 0) + energyIn(half, 2 * column, 2 * row, 2, cosine, sine);
  energies[2] = (energies[2] ?? 0) + energyIn(quarter, column, row, 1, cosine, sine);
  energies[3] = (energies[3] ?? 0) + energyIn(eighth, column >> 1, row >> 1, 1, cosine, sine);
}

/** Mean square of the central difference in the direction given, a pixel of this size. */
function energyIn(
  { width, values }: Plane,
  left: number,
  top: number,
  side: number,
  cosine: number,
  sine: number,
): number {
  let sum = 0;
  for (let row = top; row < top + side; row++) {
    for (let at = row * width + left, end = at + side; at < end; at++) {
      const across = (values[at + 1] ?? 0) - (values[at - 1] ?? 0);
      const down = (values[at + width] ?? 0) - (values[at - width] ?? 0);
      const change = across * cosine + down * sine;
      sum += change * change;
    }
  }
  return sum / (4 * side * side);
}

function widthOf({ way, count, energies }: Tally, floors: Noise['floors']): EdgeWidth {
  const [none = 0, one = 0, two = 0, three = 0] = energies;
  // Energies a pixel of the full size, with what noise makes taken off; white noise falls to a quarter with each halving.
  const clean = [
    none / count - floors[0],
    (one / count - floors[1]) / 4,
    (two / count - floors[1] / 4) / 16,
    (three / count - floors[1] / 16) / 64,
  ] as const;
  const larger = varianceFrom(clean[0], clean[2], 1, 16);
  const smaller = varianceFrom(clean[1], clean[3], 4, 64);
  const share = Math.min(1, Math.max(0, (Math.sqrt(Math.max(0, smaller)) - fromLarger) / (fromSmaller - fromLarger)));
  return { across: (way * Math.PI) / ways, variance: larger + (smaller - larger) * share, count };
}

/** Widest that can be told, in pixels squared. */
const widest = 100;

function varianceFrom(fine: number, coarse: number, fineArea: number, coarseArea: number): number {
  const ratio = (Math.max(0, fine) / Math.max(coarse, 1e-12)) ** 2;
  if (ratio <= 1) return widest;
  return Math.min(widest, (ownVariance * (coarseArea - ratio * fineArea)) / (ratio - 1));
}
