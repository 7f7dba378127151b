import type { QuantityKind } from '#core/quantity.ts';
import { type Decimal, numberOf } from './decimal.ts';
import table from './units.json';

/** A unit as spelled: what it measures, and how a number of it counts in the unit of its kind. */
export interface Unit {
  readonly kind: QuantityKind;
  readonly exponent: number;
  readonly times: number;
  readonly over: number;
  /** The number that stands for zero of the kind's own unit. */
  readonly zero: number;
}

/** The unit that a spelling in plain form means; null where it is none or has two readings. Blanks do not count. */
export function unitOf(spelling: string): Unit | null {
  return units.get(spelling.replace(/ /gu, '')) ?? null;
}

/** A number of a unit, in the unit of its kind; null where it is too large to hold. */
export function siOf(decimal: Decimal, unit: Unit): number | null {
  if (unit.times === 1 && unit.over === 1 && unit.zero === 0) return numberOf(decimal, unit.exponent);
  const n = numberOf(decimal);
  if (n === null) return null;
  const scaled = numberOf({ digits: '1', exponent: Math.abs(unit.exponent) }) ?? 1;
  const whole = (n - unit.zero) * unit.times;
  const si = (unit.exponent < 0 ? whole / scaled : whole * scaled) / unit.over;
  return Number.isFinite(si) ? si : null;
}

/** Spellings that name a unit in running text, and those of them that do only after a space. */
export const proseSpellings: readonly string[] = table.units
  .flatMap((unit) => unit.spellings)
  .filter((spelling) => !table.notInProse.includes(spelling));
export const spacedSpellings: ReadonlySet<string> = new Set(table.spacedInProse);

const units: ReadonlyMap<string, Unit> = new Map(
  table.units.flatMap(({ kind, exponent, times = 1, over = 1, zero = 0, spellings }) =>
    spellings.map((spelling) => [spelling, { kind: kind as QuantityKind, exponent, times, over, zero }]),
  ),
);
