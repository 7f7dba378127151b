/** A number as digits and a power of ten, so that a prefix is applied without a rounding error. */
export interface Decimal {
  /** Digits with at most one point, such as `4.7`. */
  readonly digits: string;
  readonly exponent: number;
}

/** Longer runs are no numbers that people write. */
const longest = 40;

/**
 * An unsigned number in plain form: `4.7`, `4,7`, `.47`, `1 000`, `1'000`, `1,234.5`, `1.234,5`, `1e-6`, `1/4`,
 * `1 1/2`. A point alone is the decimal sign; fractions are proper. Null where it is no number, and where a comma before
 * exactly three digits (`1,000`) can mean a decimal or a thousand.
 */
export function parseDecimal(text: string): Decimal | null {
  if (text.length > longest) return null;
  const parts = /^(.*?)(?:[eE]([+-]?\d{1,3}))?$/su.exec(text);
  const digits = digitsOf(parts?.[1] ?? '');
  if (digits !== null) return { digits, exponent: Number(parts?.[2] ?? 0) };
  return parseFraction(text);
}

/** Whether a number in plain form is written as a fraction. */
export function isFraction(text: string): boolean {
  return text.includes('/');
}

/** The number times a power of ten; null where it is too large to hold. */
export function numberOf(decimal: Decimal, exponent = 0): number | null {
  const n = Number(`${decimal.digits}e${decimal.exponent + exponent}`);
  return Number.isFinite(n) ? n : null;
}

/** An unsigned number, read as `parseDecimal` does. */
export function parseNumber(text: string): number | null {
  const decimal = parseDecimal(text);
  return decimal === null ? null : numberOf(decimal);
}

function digitsOf(text: string): string | null {
  if (/^(?:0|[1-9]\d*)$/u.test(text)) return text;
  if (/^(?:0|[1-9]\d*)?\.\d+$/u.test(text)) return text;
  if (/^(?:0|[1-9]\d*)?,\d+$/u.test(text)) return /^[1-9]\d{0,2},\d{3}$/u.test(text) ? null : text.replace(',', '.');
  if (/^[1-9]\d{0,2}([ '’])\d{3}(?:\1\d{3})*(?:[.,]\d+)?$/u.test(text)) {
    return text.replace(/[ '’]/gu, '').replace(',', '.');
  }
  if (/^[1-9]\d{0,2}(?:,\d{3})+\.\d+$|^[1-9]\d{0,2}(?:,\d{3}){2,}$/u.test(text)) return text.replace(/,/gu, '');
  if (/^[1-9]\d{0,2}(?:\.\d{3})+,\d+$|^[1-9]\d{0,2}(?:\.\d{3}){2,}$/u.test(text)) {
    return text.replace(/\./gu, '').replace(',', '.');
  }
  return null;
}

function parseFraction(text: string): Decimal | null {
  const parts = /^(?:(\d{1,4}) )?([1-9]\d?) ?\/ ?([1-9]\d?)$/u.exec(text);
  if (parts === null || Number(parts[2]) >= Number(parts[3])) return null;
  const n = Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3]);
  return { digits: String(n), exponent: 0 };
}
