import type { Money } from '#core/quantity.ts';
import table from './currencies.json';
import { parseNumber } from './decimal.ts';
import { plainForm } from './plainForm.ts';

/** Longer cells are no sums of money. */
const longest = 40;

/**
 * A sum of money: `$0.82`, `€ 1,20`, `1.234,50 EUR`, `USD 3`. `currency` (ISO 4217) is what the column says and holds
 * where the text does not tell; a `$`, `¥` or `kr` alone does not tell, since several currencies use it. One separator
 * before exactly three digits is a thousand or a decimal by the habit of the currency, and null where that is not
 * known. A `~` is passed over. Null for anything else, ranges and negative sums included.
 */
export function parseMoney(text: string, currency: string | null = null): Money | null {
  if (text.length > longest) return null;
  const plain = plainForm(text)
    .replace(/^(?:~|≈|ca\.|approx\.) ?/iu, '')
    .replace(/ ?(?:\/ ?(?:pc|pcs|ea)\.?|each|ea\.?)$/iu, '');
  const parts = /^(?<before>[^\d.,]*)(?<number>[.,]?\d[\d.,' ]*?)(?:,[-–—]+)?(?<after>[^\d,]*)$/u.exec(plain);
  const { before = '', number = '', after = '' } = parts?.groups ?? {};
  const marks = [before, after].map((mark) => mark.replace(/ /gu, '').toUpperCase()).filter((mark) => mark !== '');
  const named = marks.map((mark) => currencyOf(mark));
  if (parts === null || marks.length > 2 || named.includes(undefined)) return null;
  const told = [...new Set(named.filter((code) => typeof code === 'string'))];
  if (told.length > 1) return null;
  const known = told[0] ?? currency;
  const amount = amountOf(number, known ?? marks[0] ?? null);
  return amount === null ? null : { amount, currency: known };
}

/** The code that a mark stands for; null for a mark that several currencies share, undefined for no mark at all. */
function currencyOf(mark: string): string | null | undefined {
  const [code = '', symbol] = [mark.slice(0, 3), mark.slice(3)];
  if (table.codes.includes(code) && /^[$€£¥]?$/u.test(symbol ?? '')) return code;
  return (
    (table.symbols as Partial<Record<string, string>>)[mark] ?? (table.sharedSymbols.includes(mark) ? null : undefined)
  );
}

function amountOf(number: string, habit: string | null): number | null {
  const thousand = /^[1-9]\d{0,2}([.,])\d{3}$/u.exec(number)?.[1];
  if (thousand === undefined) return parseNumber(number);
  if (habit === null || !table.pointIsDecimal.includes(habit)) return null;
  return Number(thousand === ',' ? number.replace(',', '') : number);
}
