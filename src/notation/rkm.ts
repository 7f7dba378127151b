import type { QuantityKind } from '#core/quantity.ts';
import { type Decimal, numberOf, parseDecimal } from './decimal.ts';
import table from './rkm.json';

/** What a value without a unit says. */
export interface Shorthand {
  readonly kind: QuantityKind;
  readonly si: number;
}

/**
 * A value in plain form whose letter stands for the decimal point or the unit: `4k7`, `R47`, `100n`, `4.7k`. Without a
 * kind only what has one reading is read: `100N`, `1G`, `u1` and `2700K` (a colour of light) need one. Null otherwise.
 */
export function parseShorthand(text: string, kind: QuantityKind | undefined): Shorthand | null {
  const parts = /^(?<before>[\d.,]*) ?(?<letter>[A-Za-zμ])(?<after>\d{0,3})(?<tolerance>[BCDFGJKM]?)$/u.exec(text);
  const { before = '', letter = '', after = '', tolerance = '' } = parts?.groups ?? {};
  if (before + after === '' || (tolerance !== '' && (kind === undefined || after === ''))) return null;
  const meant = kind ?? kindWithoutHint(text, before, letter, after);
  const exponent = meant === null ? undefined : exponents[meant]?.[letter];
  const decimal = decimalOf(before, after, text);
  if (meant === null || exponent === undefined || decimal === null) return null;
  const si = numberOf(decimal, exponent);
  return si === null ? null : { kind: meant, si };
}

const exponents: Partial<Record<QuantityKind, Partial<Record<string, number>>>> = table.exponents;

/** The kind whose unit or code a letter stands for when nothing else tells. */
function kindWithoutHint(text: string, before: string, letter: string, after: string): QuantityKind | null {
  if (before === '') return letter === 'R' ? 'resistance' : null;
  if (/[kRr]/u.test(letter)) return 'resistance';
  if (letter === 'K') return after === '' && (text.includes(' ') || Number(before) >= 1000) ? null : 'resistance';
  if (letter === 'M') return 'resistance';
  if (/[LGT]/u.test(letter)) return after === '' ? null : 'resistance';
  if (/[pnuμ]/u.test(letter)) return 'capacitance';
  return letter === 'V' && after !== '' ? 'voltage' : null;
}

function decimalOf(before: string, after: string, text: string): Decimal | null {
  if (after === '') return parseDecimal(before);
  // A letter between digits is the decimal point, so there can be no other point and no blank.
  return /^\d{0,4}$/u.test(before) && !text.includes(' ') ? { digits: `${before || '0'}.${after}`, exponent: 0 } : null;
}
