import type { Quantity } from '#core/quantity.ts';
import letters from './toleranceLetters.json';

/**
 * A capacitor's code (EIA-198): two digits and a power of ten in picofarads, where 8 stands for 0.01 and 9 for 0.1,
 * or `R` as the decimal point; a tolerance letter may follow. `104` and `104K` are 100 nF, `330` is 33 pF, `4R7` is
 * 4.7 pF. Null for anything else.
 */
export function parseCapacitorCode(text: string): Quantity | null {
  const written = text.trim();
  const parts = pattern.exec(written);
  if (parts === null) return null;
  const { significant, power, whole, fraction } = parts.groups ?? {};
  const si =
    significant === undefined
      ? Number(`${whole || '0'}.${fraction || '0'}e-12`)
      : Number(`${significant}e${exponentOf(power ?? '0') - 12}`);
  return si > 0 ? { kind: 'capacitance', si, text: written } : null;
}

/** The tolerance that follows a capacitor's code, as a fraction; null without one that is a share of the value. */
export function capacitorCodeTolerance(text: string): number | null {
  const letter = parseCapacitorCode(text) === null ? '' : text.trim().slice(-1);
  return (letters.capacitor as Partial<Record<string, number>>)[letter] ?? null;
}

const toleranceClass = [...Object.keys(letters.capacitor), ...letters.capacitorNoFraction].join('');
const pattern = new RegExp(
  `^(?:(?<significant>[1-9]\\d)(?<power>[0-689])|(?<whole>\\d?)R(?<fraction>\\d{1,2}))[${toleranceClass}]?$`,
  'u',
);

function exponentOf(power: string): number {
  if (power === '8') return -2;
  return power === '9' ? -1 : Number(power);
}
