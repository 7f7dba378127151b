import type { Price } from '#core/part.ts';
import { parseNumber } from '#notation/decimal.ts';
import { parseMoney } from '#notation/money.ts';

/** A price with the number of pieces it is for, where the words beside it tell. */
export interface PricePerPack {
  readonly amount: number;
  readonly currency: string | null;
  readonly per: number;
}

/** Pieces in a pack: 'pack of 25', '50-pack', '(10 pcs)', 'price for 5'. */
const packWords = [
  /\b(?:pack|packet|bag|box|set|kit|strip|reel|lot|bundle)s? of (\d{1,5})\b/iu,
  /\b(\d{1,5})[- ]?(?:pack|pcs? pack|er pack)\b/iu,
  /\((\d{1,5})\s*(?:pcs?|pieces?|off|stk|x)\.?\)/iu,
  /\bprice (?:for|per) (\d{1,5})(?:\s*(?:pcs?|pieces?)\.?)?(?=$|[\s.,;)])/iu,
];
/** Beside a sum, fewer words will do: '/ 10', 'per 100', 'for 5 pcs'. */
const afterSum = /(?:\/|\bper\b|\bfor\b|\bpro\b)\s*(\d{1,5})(?:\s*(?:pcs?|pieces?|off|stk)?\.?)?(?=$|[\s),;])/iu;

/** Reads '$4.50 / 10' or '3,20 € (pack of 25)'. Null where no sum can be read. */
export function parsePrice(text: string, currency: string | null): PricePerPack | null {
  const pack = packSize(text, [...packWords, afterSum]);
  const money = parseMoney(
    pack === null
      ? text
      : text
          .replace(pack.words, ' ')
          .replace(/\(\s*\)/, '')
          .trim(),
    currency,
  );
  return money === null ? null : { ...money, per: pack?.size ?? 1 };
}

/** How many pieces a pack holds, with the words that say so; null where nothing does. */
export function packSize(
  text: string,
  patterns: readonly RegExp[] = packWords,
): { size: number; words: string } | null {
  for (const pattern of patterns) {
    const match = pattern.exec(text);
    const size = match === null ? null : parseNumber(match[1] ?? '');
    if (match !== null && size !== null && size > 0) return { size, words: match[0] };
  }
  return null;
}

/** A price as a part has it. */
export function priceOf(price: PricePerPack, date: string | null): Price {
  return { amount: price.amount, currency: price.currency, per: price.per, date };
}
