/** A fraction, so that what is multiplied and added never picks up a rounding error. `under` is positive. */
export interface Exact {
  readonly over: bigint;
  readonly under: bigint;
}

export const zero: Exact = { over: 0n, under: 1n };

/** The decimal that a number is written as: 0.1 is one tenth. */
export function exactOf(n: number): Exact {
  const [, sign = '', digits = '0', after = '', power = '0'] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/u.exec(String(n)) ?? [];
  const exponent = BigInt(Number(power) - after.length);
  const whole = BigInt(`${sign}${digits}${after}`);
  return exponent < 0n ? { over: whole, under: 10n ** -exponent } : { over: whole * 10n ** exponent, under: 1n };
}

export function times(one: Exact, other: Exact): Exact {
  return { over: one.over * other.over, under: one.under * other.under };
}

export function plus(one: Exact, other: Exact): Exact {
  return { over: one.over * other.under + other.over * one.under, under: one.under * other.under };
}

/** `divisor` is positive. */
export function dividedBy(one: Exact, divisor: Exact): Exact {
  return { over: one.over * divisor.under, under: one.under * divisor.over };
}

/** The least whole number that is not below a positive one. */
export function roundedUp({ over, under }: Exact): Exact {
  return { over: (over + under - 1n) / under, under: 1n };
}

/** With so many decimals, halves rounded up; for numbers that are not negative. */
export function formatExact({ over, under }: Exact, decimals: number): string {
  const scale = 10n ** BigInt(decimals);
  const scaled = (2n * over * scale + under) / (2n * under);
  const whole = `${scaled / scale}`;
  return decimals === 0 ? whole : `${whole}.${`${scaled % scale}`.padStart(decimals, '0')}`;
}

/** With as many decimals as it needs, at most six. */
export function formatShort(number: Exact): string {
  return formatExact(number, 6).replace(/\.?0+$/u, '');
}
