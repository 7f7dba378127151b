import { assert } from '#core/failure.ts';
import type { QuantityKind } from '#core/quantity.ts';

/** A unit to write in, what one of it counts in the unit of the kind, and the least number it is used for. */
type Scale = readonly [unit: string, size: number, from: number];

/**
 * The one way a quantity is written: three significant digits, a prefix, a plain space, such as `330 Ω`, `4.7 kΩ`,
 * `100 nF`, `±5 %`. A frequency of at most seven digits is written whole (`32.768 kHz`). The micro sign is U+00B5
 * and the minus U+2212.
 */
export function formatQuantity(kind: QuantityKind, si: number): string {
  assert(Number.isFinite(si), `a ${kind} of ${si} cannot be written`);
  const round = kind === 'frequency' ? wholeOrThreeDigits : threeDigits;
  const size = Math.abs(si);
  const ladder = scales[kind];
  // Rounding comes before choosing: 999.6 Ω is 1 kΩ.
  const scale = ladder.findLast(([, , from]) => round(size) >= from) ?? ladder[0];
  const unit = size === 0 ? (zeroUnits[kind] ?? scale[0]) : scale[0];
  const sign = kind === 'tolerance' ? '±' : si < 0 ? '−' : '';
  return `${sign}${round(size / scale[1])} ${unit}`;
}

function threeDigits(n: number): number {
  return Number(n.toPrecision(3));
}

/** A crystal's frequency has more digits than three, and each of them counts. */
function wholeOrThreeDigits(n: number): number {
  const seven = Number(n.toPrecision(7));
  return Math.abs(seven - n) <= 1e-10 * Math.abs(n) ? seven : threeDigits(n);
}

function engineering(unit: string, ...prefixes: readonly [string, number][]): [Scale, ...Scale[]] {
  const [first = ['', 1], ...others] = prefixes;
  const scaleOf = ([prefix, size]: readonly [string, number]): Scale => [prefix + unit, size, size];
  return [scaleOf(first), ...others.map(scaleOf)];
}

const scales: Readonly<Record<QuantityKind, readonly [Scale, ...Scale[]]>> = {
  resistance: engineering('Ω', ['µ', 1e-6], ['m', 1e-3], ['', 1], ['k', 1e3], ['M', 1e6], ['G', 1e9], ['T', 1e12]),
  // The trade writes 4700 µF and 0.47 F, hardly ever a millifarad.
  capacitance: [
    ['pF', 1e-12, 0],
    ['nF', 1e-9, 1e-9],
    ['µF', 1e-6, 1e-6],
    ['F', 1, 0.1],
  ],
  inductance: engineering('H', ['n', 1e-9], ['µ', 1e-6], ['m', 1e-3], ['', 1]),
  voltage: engineering('V', ['n', 1e-9], ['µ', 1e-6], ['m', 1e-3], ['', 1], ['k', 1e3]),
  current: engineering('A', ['p', 1e-12], ['n', 1e-9], ['µ', 1e-6], ['m', 1e-3], ['', 1], ['k', 1e3]),
  power: engineering('W', ['n', 1e-9], ['µ', 1e-6], ['m', 1e-3], ['', 1], ['k', 1e3]),
  frequency: engineering('Hz', ['', 1], ['k', 1e3], ['M', 1e6], ['G', 1e9]),
  // Cells are rated in milliampere-hours up to large packs.
  charge: [
    ['µAh', 3.6e-3, 0],
    ['mAh', 3.6, 3.6],
    ['Ah', 3600, 36_000],
  ],
  energy: [
    ['µJ', 1e-6, 0],
    ['mJ', 1e-3, 1e-3],
    ['J', 1, 1],
    ['Wh', 3600, 360],
    ['kWh', 3.6e6, 3.6e6],
  ],
  length: [
    ['nm', 1e-9, 0],
    ['µm', 1e-6, 1e-6],
    ['mm', 1e-3, 1e-3],
    ['m', 1, 1],
    ['km', 1e3, 1e3],
  ],
  mass: [
    ['mg', 1e-6, 0],
    ['g', 1e-3, 1e-3],
    ['kg', 1, 1],
  ],
  time: [
    ['ns', 1e-9, 0],
    ['µs', 1e-6, 1e-6],
    ['ms', 1e-3, 1e-3],
    ['s', 1, 1],
    ['min', 60, 120],
    ['h', 3600, 7200],
  ],
  temperature: [['°C', 1, 0]],
  tolerance: [
    ['ppm', 1e-6, 0],
    ['%', 1e-2, 1e-4],
  ],
};

/** A zero is written in the plain unit. */
const zeroUnits: Partial<Record<QuantityKind, string>> = {
  resistance: 'Ω',
  capacitance: 'pF',
  inductance: 'H',
  voltage: 'V',
  current: 'A',
  power: 'W',
  charge: 'mAh',
  energy: 'J',
  length: 'mm',
  mass: 'g',
  time: 's',
};
