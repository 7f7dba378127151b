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

/**
 * The code of a capacitor of so many farads, as `parseCapacitorCode` reads it: `104` for 100 nF, `4R7` below 10 pF.
 * Null where two digits and a power of ten cannot carry the value.
 */
export function capacitorCodeOf(farads: number): string | null {
  const picofarads = farads * 1e12;
  if (!(picofarads > 0) || !Number.isFinite(picofarads)) return null;
  const [mantissa = '', power = ''] = picofarads.toExponential(1).split('e');
  if (Math.abs(Number(`${mantissa}e${power}`) / picofarads - 1) > 1e-6) return null;
  const exponent = Number(power);
  if (exponent === 0) return mantissa.replace('.', 'R');
  if (exponent === -1) return `R${mantissa.replace('.', '').replace(/0$/u, '')}`;
  return exponent > 0 && exponent <= 7 ? `${mantissa.replace('.', '')}${exponent - 1}` : null;
}

/** The letter of a tolerance given as a fraction, as it follows a capacitor's code; null without one. */
export function capacitorToleranceLetter(tolerance: number): string | null {
  const found = Object.entries(letters.capacitor).find(([, fraction]) => Math.abs(fraction - tolerance) <= 1e-9);
  return found?.[0] ?? null;
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
