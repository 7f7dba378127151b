import type { Quantity } from '#core/quantity.ts';
import table from './colourBands.json';
import { formatQuantity } from './formatQuantity.ts';

/** What the bands of a resistor say. `tolerance` is null for a link, `tempco` (ppm/K) where no band tells it. */
export interface BandReading {
  readonly value: Quantity;
  readonly tolerance: Quantity | null;
  readonly tempco: number | null;
}

/**
 * Reads one (black: a link), three, four, five or six bands in the order given, by IEC 60062:2016: three and four
 * carry two digits, five and six three; a sixth tells the temperature coefficient. Three bands mean ±20 %. Null where
 * a colour is unknown or cannot stand at its place, which often means that the part was read from the wrong end.
 */
export function parseColourBands(colours: readonly string[]): BandReading | null {
  const text = colours.join(' ');
  const bands = colours.map((name) => colourOf(name));
  if (bands.length === 1) {
    return bands[0]?.name === 'black'
      ? { value: { kind: 'resistance', si: 0, text }, tolerance: null, tempco: null }
      : null;
  }
  if (bands.length < 3 || bands.length > 6) return null;
  const count = bands.length < 5 ? 2 : 3;
  const digits = bands.slice(0, count).map((band) => band?.digit ?? null);
  const exponent = bands[count]?.exponent ?? null;
  const tolerance = bands.length === 3 ? table.toleranceWithoutBand : (bands[count + 1]?.tolerance ?? null);
  const tempco = bands[5]?.tempco ?? null;
  if (digits.includes(null) || digits[0] === 0 || exponent === null || tolerance === null) return null;
  if (bands.length === 6 && tempco === null) return null;
  return {
    value: { kind: 'resistance', si: Number(`${digits.join('')}e${exponent}`), text },
    tolerance: { kind: 'tolerance', si: tolerance, text: formatQuantity('tolerance', tolerance) },
    tempco,
  };
}

/**
 * The bands of a resistor of `ohms` with a tolerance given as a fraction (0.05 for ±5 %), from the end that is read
 * first; one black band for a link. Six bands end with a temperature coefficient in ppm/K. Null where so many bands
 * cannot carry the value, or no colour the tolerance or the coefficient.
 */
export function colourBandsOf(
  ohms: number,
  tolerance: number,
  bands: 4 | 5 | 6,
  tempco: number | null = null,
): string[] | null {
  if (ohms === 0) return ['black'];
  const value = valueBandsOf(ohms, bands === 4 ? 2 : 3);
  const last = nameWhere((c) => c.tolerance !== null && Math.abs(c.tolerance - tolerance) <= 1e-9);
  const sixth = bands === 6 ? [nameWhere((c) => c.tempco !== null && c.tempco === tempco)] : [];
  const names = [...(value ?? [null]), last, ...sixth];
  return names.every((name) => name !== null) ? names : null;
}

/** The bands that carry the value alone: its digits and its power of ten. Null where so many digits cannot hold it. */
export function valueBandsOf(ohms: number, digits: 2 | 3): string[] | null {
  if (!(ohms > 0) || !Number.isFinite(ohms)) return null;
  const [mantissa = '', power = ''] = ohms.toExponential(digits - 1).split('e');
  if (Math.abs(Number(`${mantissa}e${power}`) / ohms - 1) > 1e-6) return null;
  const exponent = Number(power) - (digits - 1);
  const names = [...mantissa.replace('.', '')].map((digit) => nameWhere((c) => c.digit === Number(digit)));
  const all = [...names, nameWhere((c) => c.exponent === exponent)];
  return all.every((name) => name !== null) ? all : null;
}

type Colour = (typeof table.colours)[number];

function colourOf(name: string): Colour | undefined {
  const key = name.trim().toLowerCase();
  return table.colours.find((colour) => colour.name === key || colour.also.includes(key));
}

function nameWhere(fits: (colour: Colour) => boolean): string | null {
  return table.colours.find(fits)?.name ?? null;
}
