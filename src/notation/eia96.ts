import type { Quantity } from '#core/quantity.ts';
import table from './eia96.json';
import { preferredSeries } from './series.ts';

/**
 * The three characters on a 1 % chip resistor: the place of its three digits in E96, 01 to 96, and a letter for the
 * power of ten. `01A` is 100 Ω, `68X` is 49.9 Ω. Null for anything else.
 */
export function parseEia96(text: string): Quantity | null {
  const written = text.trim();
  const parts = /^(\d\d)([A-Z])$/u.exec(written);
  const digits = preferredSeries(96)[Number(parts?.[1] ?? 0) - 1];
  const exponent = (table.exponents as Partial<Record<string, number>>)[parts?.[2] ?? ''];
  if (digits === undefined || exponent === undefined) return null;
  return { kind: 'resistance', si: Number(`${digits}e${exponent}`), text: written };
}

/** The three characters for `ohms`, as `parseEia96` reads them; null where E96 has no such number. */
export function eia96Of(ohms: number): string | null {
  if (!(ohms > 0) || !Number.isFinite(ohms)) return null;
  const [mantissa = '', power = ''] = ohms.toExponential(2).split('e');
  const digits = Number(mantissa.replace('.', ''));
  if (Math.abs(Number(`${mantissa}e${power}`) / ohms - 1) > 1e-6) return null;
  const place = preferredSeries(96).indexOf(digits) + 1;
  const letter = Object.entries(table.exponents).find(([, exponent]) => exponent === Number(power) - 2)?.[0];
  return place === 0 || letter === undefined ? null : `${String(place).padStart(2, '0')}${letter}`;
}
