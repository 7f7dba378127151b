import type { Endpoint } from '#core/connection.ts';
import type { Amount, Money } from '#core/quantity.ts';

/** `4`, `30 cm`, `about 30 cm`. */
export function formatAmount(amount: Amount): string {
  const number = Number(amount.n.toPrecision(6));
  const counted = amount.unit === 'pcs' || amount.unit === '' ? `${number}` : `${number} ${amount.unit}`;
  return amount.approximate ? `about ${counted}` : counted;
}

/** `0.10 EUR`; the number alone where the currency is not known. */
export function formatMoney({ amount, currency }: Money): string {
  return currency === null ? amount.toFixed(2) : `${amount.toFixed(2)} ${currency}`;
}

/** `U1.D5`; a part alone where no pin is named. */
export function formatEnd(end: Endpoint): string {
  return end.pin === '' ? end.ref : `${end.ref}.${end.pin}`;
}

/** References with runs drawn together: `R1–R4, R7`. */
export function formatRefs(refs: readonly string[]): string {
  const runs: { first: string; last: string; length: number }[] = [];
  for (const ref of refs) {
    const run = runs.at(-1);
    if (run && follows(run.last, ref)) {
      run.last = ref;
      run.length++;
    } else runs.push({ first: ref, last: ref, length: 1 });
  }
  return runs
    .flatMap(({ first, last, length }) =>
      length === 1 ? [first] : length === 2 ? [first, last] : [`${first}–${last}`],
    )
    .join(', ');
}

function follows(before: string, ref: string): boolean {
  const [, prefix, number] = /^(\D+)(\d+)$/.exec(before) ?? [];
  return prefix !== undefined && ref === `${prefix}${Number(number) + 1}`;
}
