import type { Quantity } from '#core/quantity.ts';

/**
 * The digits printed on a chip resistor (IEC 60062): two or three significant digits and a power of ten, or `R` as
 * the decimal point. `103` and `1002` are 10 kΩ, `220` is 22 Ω, `12R0` is 12 Ω; zeros alone are a link. Null for
 * anything else. Read only what is known to be such a code: as a plain number `220` would be 220 Ω.
 */
export function parseSmdResistorCode(text: string): Quantity | null {
  const written = text.trim();
  const si = ohmsOf(written);
  return si === null ? null : { kind: 'resistance', si, text: written };
}

function ohmsOf(code: string): number | null {
  if (/^0{1,4}$/u.test(code) && code !== '00') return 0;
  if (/^[1-9]\d{1,2}[0-7]$/u.test(code)) return Number(`${code.slice(0, -1)}e${code.slice(-1)}`);
  if (/^(?:\d{1,2}R\d{0,2}|R\d{2,3})$/u.test(code)) return Number(`0${code.replace('R', '.')}`);
  return null;
}
