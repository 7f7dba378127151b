import type { Quantity } from '#core/quantity.ts';
import { remember } from '#core/remember.ts';
import { parseValue } from './parseValue.ts';
import { isPreferred } from './series.ts';
import { proseSpellings, spacedSpellings } from './units.ts';

/** A quantity in running text; `start` and `end` are UTF-16 code units of it. */
export interface FoundQuantity {
  readonly quantity: Quantity;
  readonly start: number;
  readonly end: number;
}

/**
 * The quantities in running text, in order: those with a unit (`4.7 kΩ`, `330-ohm`, `5 V`), letter codes (`4k7`,
 * `330R`) and shortened preferred values (`10k`, `100n`, but not `4K`). Never a bare number, never within an identifier, a
 * path, a range (`3.3–5 V`), a rate (`m/s`) or an area (`mm²`).
 */
export const findQuantities = remember((text): readonly FoundQuantity[] => {
  const found: FoundQuantity[] = [];
  for (const match of text.matchAll(pattern)) {
    const quantity = fits(match.groups ?? {}) ? parseValue(match[0]) : null;
    if (quantity !== null) found.push({ quantity, start: match.index, end: match.index + match[0].length });
  }
  return found;
});

function fits({ gap, unit, number, letter, after }: Partial<Record<string, string>>): boolean {
  if (unit !== undefined) {
    if (gap === '-') return /^[a-zA-Z]{3,}$/u.test(unit);
    return gap !== '' || !spacedSpellings.has(unit);
  }
  if (after !== undefined || letter === 'R') return true;
  const n = Number((number ?? '').replace(',', '.'));
  // `1.5u` is the width of a key.
  if (n < 10 && letter !== 'k' && letter !== 'K' && letter !== 'M') return false;
  return isPreferred(n, 24) || isPreferred(n, 96);
}

const digits = '\\d{1,3}(?:[\\u00a0\\u2009\\u202f]\\d{3})+(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)*(?:\\/\\d+)?|[¼½¾]';
const spellings = proseSpellings
  .flatMap((spelling) => [spelling, spelling.replace('μ', '\u00b5'), spelling.replace('Ω', '\u2126')])
  .sort((a, b) => b.length - a.length)
  .map((spelling) => spelling.replace(/[.*+?^${}()|[\]\\]/gu, '\\$&'))
  .join('|');

const pattern = new RegExp(
  `(?<![\\p{L}\\p{N}_.,/#@^\\\\:–—-])[±+−-]?(?:` +
    `(?:${digits})(?<gap>[ \\u00a0\\u2009\\u202f-]?)(?<unit>${spellings})|` +
    `(?<number>\\d{1,4}(?:[.,]\\d{1,2})?)(?<letter>[kKMRnu\\u00b5μ])|` +
    `\\d{1,4}[kKMRpnu\\u00b5μ](?<after>\\d{1,2})` +
    `)(?![\\p{L}\\p{N}_²³^°(\\[]|[.–—-][\\p{L}\\p{N}]|/\\p{L})`,
  'gu',
);
