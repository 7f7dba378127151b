import type { Money } from '#core/quantity.ts';
import { parseMoney } from './money.ts';

/** A sum of money in running English, or a range of two; `from` and `to` are UTF-16 code units of the text. */
export interface FoundMoney {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  /** More than `least` for a range. */
  readonly most: number;
  /** ISO 4217; null where the text does not tell. */
  readonly currency: string | null;
  /** Whether it is told to the hundredth, and no range. */
  readonly exact: boolean;
}

const number = '\\d(?:[\\d.,]*\\d)?';
const before = '(?:(?:[A-Z]{2})?[€$£¥]|(?<![A-Z])[A-Z]{3})\\s?';
const after = '(?:\\s?[€£$¥]|\\s?(?:[A-Z]{3}|euros?|dollars?|pounds?|francs?)(?![\\p{L}\\p{N}]))';
const sum = `(?:${before}${number}(?:${after})?|(?<![\\p{L}\\p{N}.,])${number}${after})`;
const single = new RegExp(sum, 'gu');
const lead = new RegExp(
  `(?<![\\p{L}\\p{N}.,])(?:(?:between|from)\\s+(?<between>(?:${before})?${number}(?:${after})?)\\s*(?:and|to)` +
    `|(?<plain>(?:${before})?${number}(?:${after})?)\\s*(?:to|or|[-–—]))\\s*$`,
  'u',
);
const upper = new RegExp(`^\\s?(?:to\\s|[-–—])\\s?(?<n>${number})(?![\\p{L}\\p{N}]|\\s?[€£$¥]|\\s[A-Z]{3})`, 'u');

/** The lower end of a range is no longer, with its currency. */
const longestLead = 40;

/** Sums of money with a sign, a code or a name of a currency: `39.45 EUR`, `$12`, `30–40 €`, `between 30 and 40 euros`. */
export function findMoney(text: string): FoundMoney[] {
  const found: FoundMoney[] = [];
  for (const match of text.matchAll(single)) {
    const money = parseMoney(match[0]);
    if (money === null) continue;
    const [from, to] = [match.index, match.index + match[0].length];
    const range = rangeBefore(text, from, money) ?? rangeAfter(text, to, money);
    if (range === null) {
      const exact = /[.,]\d{2}(?!\d)/u.test(match[0]);
      found.push({ from, to, least: money.amount, most: money.amount, currency: money.currency, exact });
      continue;
    }
    while ((found.at(-1)?.to ?? 0) > (range.from ?? from)) found.pop();
    found.push({ from, to, ...range, currency: money.currency, exact: false });
  }
  return found;
}

type Ends = Pick<FoundMoney, 'least' | 'most'> & Partial<Pick<FoundMoney, 'from' | 'to'>>;

/** `30–` before 40 EUR. */
function rangeBefore(text: string, from: number, { amount, currency }: Money): Ends | null {
  const start = Math.max(0, from - longestLead);
  const match = lead.exec(text.slice(start, from));
  const lower = parseMoney(match?.groups?.between ?? match?.groups?.plain ?? '', currency);
  if (match === null || lower === null || lower.amount >= amount || lower.currency !== currency) return null;
  return { from: start + match.index, least: lower.amount, most: amount };
}

/** `–40` after $30. */
function rangeAfter(text: string, to: number, { amount, currency }: Money): Ends | null {
  const match = upper.exec(text.slice(to, to + longestLead));
  const higher = parseMoney(match?.groups?.n ?? '', currency);
  if (match === null || higher === null || higher.amount <= amount) return null;
  return { to: to + match[0].length, least: amount, most: higher.amount };
}
