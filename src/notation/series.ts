import table from './series.json';

export type SeriesSize = 3 | 6 | 12 | 24 | 48 | 96 | 192;

/**
 * One decade of an E series as IEC 60063 lists it: two digits from 10 up to E24, three digits from 100 above.
 * E24 and coarser are historical; E48, E96 and E192 are `round(100 · 10^(i/n))`, with one listed exception in E192.
 */
export function preferredSeries(n: SeriesSize): readonly number[] {
  return series[n];
}

/**
 * The preferred number closest to `value` by ratio, in any decade. Zero, negative and infinite values have none and
 * come back as they are.
 */
export function nearestPreferred(value: number, n: SeriesSize): number {
  if (!(value > 0) || !Number.isFinite(value)) return value;
  const decade = series[n];
  const digits = n <= 24 ? 1 : 2;
  const exponent = Math.floor(Math.log10(value)) - digits;
  // The next decade's first number is the nearest one to 9.9.
  const candidates = [...decade.map((m) => Number(`${m}e${exponent}`)), Number(`${decade[0] ?? 1}e${exponent + 1}`)];
  let best = value;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const distance = Math.abs(Math.log(candidate / value));
    if (distance < least) [best, least] = [candidate, distance];
  }
  return best;
}

/** Whether `value` is a number of the series in some decade, within one part in a million. */
export function isPreferred(value: number, n: SeriesSize): boolean {
  if (!(value > 0) || !Number.isFinite(value)) return false;
  return Math.abs(nearestPreferred(value, n) / value - 1) <= 1e-6;
}

const series: Readonly<Record<SeriesSize, readonly number[]>> = {
  3: everyNth(table['24'], 8),
  6: everyNth(table['24'], 4),
  12: everyNth(table['24'], 2),
  24: table['24'],
  48: geometric(48),
  96: geometric(96),
  192: geometric(192).map((m) => (m === table['192exception'].computed ? table['192exception'].listed : m)),
};

function everyNth(numbers: readonly number[], n: number): readonly number[] {
  return numbers.filter((_, index) => index % n === 0);
}

function geometric(n: number): readonly number[] {
  return Array.from({ length: n }, (_, index) => Math.round(100 * 10 ** (index / n)));
}
