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

/**
 * The code of `figures` characters for a chip resistor, as `parseSmdResistorCode` reads it: `103` and `1002` for 10 kΩ,
 * `4R7` for 4.7 Ω. Null where so few characters cannot carry the value.
 */
export function smdResistorCodeOf(ohms: number, figures: 3 | 4): string | null {
  if (ohms === 0) return '0'.repeat(figures);
  if (!(ohms > 0) || !Number.isFinite(ohms)) return null;
  const digits = figures - 1;
  const [mantissa = '', power = ''] = ohms.toExponential(digits - 1).split('e');
  if (Math.abs(Number(`${mantissa}e${power}`) / ohms - 1) > 1e-6) return null;
  const significant = mantissa.replace('.', '');
  const exponent = Number(power);
  const code =
    exponent < digits - 1
      ? `${significant.slice(0, Math.max(0, exponent + 1))}R${'0'.repeat(Math.max(0, -exponent - 1))}${significant.slice(Math.max(0, exponent + 1))}`
      : `${significant}${exponent - digits + 1}`;
  const short = code.length > figures && code.endsWith('0') ? code.slice(0, figures) : code;
  return parseSmdResistorCode(short)?.si === ohms ? short : null;
}

function ohmsOf(code: string): number | null {
  if (/^0{1,4}$/u.test(code) && code !== '00') return 0;
  if (/^[1-9]\d{1,2}[0-7]$/u.test(code)) return Number(`${code.slice(0, -1)}e${code.slice(-1)}`);
  if (/^(?:\d{1,2}R\d{0,2}|R\d{2,3})$/u.test(code)) return Number(`0${code.replace('R', '.')}`);
  return null;
}
