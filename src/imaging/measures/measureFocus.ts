import { type EdgeWidth, ownVariance } from './edgeWidths.ts';

export interface Focus {
  /** 0 to 1, the sharper the higher: 1 / (1 + width of edges in pixels), 0.61 for one perfect edge; null without edges. */
  readonly score: number | null;
  /** Standard deviation of the blur in pixels, the mean over all directions; from some 4 on it reads low. Null without edges. */
  readonly blur: number | null;
  /** How the picture moved while it was taken; null where that cannot be told from defocus. */
  readonly motion: Motion | null;
  readonly verdict: 'sharp' | 'soft' | 'unsure';
}

export interface Motion {
  /** Degrees clockwise from the row's direction, 0 to 180: to and fro is the same. */
  readonly direction: number;
  /** Pixels, as if by a steady speed. */
  readonly length: number;
}

/** The sharpest share of the edges that run one way tells: shadows and what lies behind are soft in any picture. */
const sharpShare = 0.3;
/** Fewer places than this tell nothing about a way, and than that about a picture. */
const [fewestOfWay, fewestOfAll] = [24, 60];
/**
 * Sharp up to the first blur in pixels, the widest way; soft from the second on, the mean of all ways, or from the third,
 * the widest way: see `npm run bench -- pictures`. They count at some 1024 pixels a side.
 */
const [sharpUpTo, softFrom, softOneWay] = [0.95, 1.2, 1.8];
/** Movement is told from this length on, in pixels, and where it is this share of all blur. */
const [shortestMotion, motionShare] = [3.5, 0.5];

/**
 * How sharp the edges are, and whether they are wider one way than the other. The variance of the blur across edges is
 * fitted by mean + swing · cos 2(α − φ) over their directions α: a lens gives the mean, a movement over length l adds l² / 12 in its
 * own direction and nothing across it. Truth: blur of known width in made scenes, `npm run bench -- pictures`.
 */
export function measureFocus(widths: readonly EdgeWidth[]): Focus {
  const ways = sharpestOfWays(widths);
  if (placesOf(ways) < fewestOfAll) return { score: null, blur: null, motion: null, verdict: 'unsure' };
  const { mean, cosine, sine } = fitWave(ways);
  const swing = Math.hypot(cosine, sine);
  return {
    score: 1 / (1 + Math.sqrt(Math.max(0, mean + ownVariance))),
    blur: Math.sqrt(Math.max(0, mean)),
    motion: motionOf(mean, swing, ((Math.atan2(sine, cosine) * 90) / Math.PI + 180) % 180),
    verdict: verdictOf(mean, swing),
  };
}

function verdictOf(mean: number, swing: number): Focus['verdict'] {
  if (mean + swing <= sharpUpTo ** 2) return 'sharp';
  return mean >= softFrom ** 2 || mean + swing >= softOneWay ** 2 ? 'soft' : 'unsure';
}

function motionOf(mean: number, swing: number, direction: number): Motion | null {
  const length = Math.sqrt(24 * swing);
  return length >= shortestMotion && swing >= motionShare * mean ? { direction, length } : null;
}

interface Way {
  readonly across: number;
  readonly variance: number;
  readonly count: number;
}

function sharpestOfWays(widths: readonly EdgeWidth[]): Way[] {
  const ways = new Map<number, EdgeWidth[]>();
  for (const width of widths) {
    const same = ways.get(width.across);
    if (same) same.push(width);
    else ways.set(width.across, [width]);
  }
  return [...ways]
    .map(([across, same]) => ({ across, variance: sharpestOf(same), count: placesOf(same) }))
    .filter(({ count }) => count >= fewestOfWay);
}

function placesOf(widths: readonly { readonly count: number }[]): number {
  return widths.reduce((sum, { count }) => sum + count, 0);
}

/** The variance that the sharpest share of all places lies below, between two tiles in proportion. */
function sharpestOf(widths: readonly EdgeWidth[]): number {
  const total = placesOf(widths);
  let below = 0;
  let before: { share: number; variance: number } | null = null;
  for (const { count, variance } of widths.toSorted((a, b) => a.variance - b.variance)) {
    const share = (below + count / 2) / total;
    if (share >= sharpShare) {
      if (before === null) return variance;
      return before.variance + ((variance - before.variance) * (sharpShare - before.share)) / (share - before.share);
    }
    before = { share, variance };
    below += count;
  }
  return before?.variance ?? 0;
}

interface Wave {
  readonly mean: number;
  readonly cosine: number;
  readonly sine: number;
}

/** How often ways that do not follow the others are weighed anew, and how far off, in pixels squared, halves their weight. */
const [rounds, halfWeightAt] = [4, 0.4];

/**
 * variance = mean + cosine · cos 2α + sine · sin 2α over the ways α, by least squares. A way that does not follow the
 * others, as a soft shadow makes it, comes to weigh little.
 */
function fitWave(ways: readonly Way[]): Wave {
  const own = ways.map((way) => Math.sqrt(way.count) * trustIn(way, ways));
  let weights: readonly number[] = own;
  let wave = weighedWave(ways, weights);
  for (let round = 0; round < rounds; round++) {
    const { mean, cosine, sine } = wave;
    const scale = halfWeightAt + Math.max(0, mean) / 4;
    weights = ways.map(({ across, variance }, at) => {
      const off = variance - mean - cosine * Math.cos(2 * across) - sine * Math.sin(2 * across);
      return (own[at] ?? 0) / (1 + (off / scale) ** 2);
    });
    wave = weighedWave(ways, weights);
  }
  return wave;
}

/** A pair this much above the sharpest, in pixels squared, is trusted half. */
const halfTrustAt = 1.5;

/**
 * Two ways across each other have the same mean variance, whichever two, however the hand moved. Where one pair has more
 * than another, what they show is soft by itself, as grain of wood is: they are to be trusted less.
 */
function trustIn(way: Way, ways: readonly Way[]): number {
  const pairs = ways.map((one) => pairMean(one, ways)).filter((mean) => mean !== null);
  const mine = pairMean(way, ways);
  if (mine === null || pairs.length === 0) return 0.5;
  const least = Math.min(...pairs);
  return 1 / (1 + ((mine - least) / halfTrustAt) ** 2);
}

function pairMean({ across, variance }: Way, ways: readonly Way[]): number | null {
  const partner = ways.find((other) => Math.abs(Math.abs(other.across - across) - Math.PI / 2) < 0.01);
  return partner === undefined ? null : (variance + partner.variance) / 2;
}

function weighedWave(ways: readonly Way[], weights: readonly number[]): Wave {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const rows = ways.map(({ across, variance }, at) => ({
    terms: [1, Math.cos(2 * across), Math.sin(2 * across)] as const,
    variance,
    weight: weights[at] ?? 0,
  }));
  const of = (i: 0 | 1 | 2, j: 0 | 1 | 2): number =>
    // A way without edges is taken to be little different from the others.
    rows.reduce((sum, { terms, weight }) => sum + weight * terms[i] * terms[j], i === j && i > 0 ? 0.05 * total : 0);
  const to = (i: 0 | 1 | 2): number =>
    rows.reduce((sum, { terms, variance, weight }) => sum + weight * terms[i] * variance, 0);
  const column = (i: 0 | 1 | 2): Three => [of(0, i), of(1, i), of(2, i)];
  const right: Three = [to(0), to(1), to(2)];
  const all = volume(column(0), column(1), column(2));
  return {
    mean: volume(right, column(1), column(2)) / all,
    cosine: volume(column(0), right, column(2)) / all,
    sine: volume(column(0), column(1), right) / all,
  };
}

type Three = readonly [number, number, number];

/** Determinant of three columns. */
function volume(a: Three, b: Three, c: Three): number {
  return a[0] * (b[1] * c[2] - b[2] * c[1]) - b[0] * (a[1] * c[2] - a[2] * c[1]) + c[0] * (a[1] * b[2] - a[2] * b[1]);
}
