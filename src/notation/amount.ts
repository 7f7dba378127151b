import type { Amount } from '#core/quantity.ts';
import table from './amountUnits.json';
import { isFraction, parseNumber } from './decimal.ts';
import { plainForm } from './plainForm.ts';

/** Longer cells are no amounts. */
const longest = 60;

/** The unit of an amount that the text leaves to the builder. */
export const asNeeded = 'as needed';

/**
 * How many or how much: `4`, `2.00`, `4x`, `58 pcs`, `1 set`, `~30cm`. Spares stand apart: `10 (+4)` is 10. A range
 * (`8 - 10`), a least number (`4+`) and words such as `about` make it approximate, with the lower number. `As needed`
 * is one approximate unit of `as needed`. Null where nothing can be read, and for `1,000`, which has two readings.
 */
export function parseAmount(text: string): Amount | null {
  if (text.length > longest) return null;
  const plain = plainForm(text).toLowerCase();
  if (table.asNeeded.includes(plain)) return { n: 1, unit: asNeeded, approximate: true };
  const withoutSpares = plain.replace(/ ?\((?:\+ ?\d{1,4}|\+? ?(?:\d{1,4} )?spares?)\)$/u, '');
  const total = withoutSpares
    // '4 (2 per side)' says how the four are shared out; '1 pack of 10' is one pack.
    .replace(/ ?\((?:\d{1,3}|one|two|three|four) (?:per|on|for|at|in) [^()]*\)$/u, '')
    .replace(/^(\d{1,3} (?:packs?|bags?|boxes|box|strips?|reels?|kits?|sets?)) of \d{1,5}$/u, '$1');
  const lead = leads.find((word) => total.startsWith(word));
  const rest = total.slice(lead?.length ?? 0).trim();
  const parts =
    /^(?<sign>[x×] ?)?(?<first>\d[\d.,' /]*|[.,]\d+)(?<last> ?(?:-|–|—|to) ?\d[\d.,]*)?(?<more>\+)?(?<unit>.*)$/u.exec(
      rest,
    );
  if (parts === null) return null;
  const { sign, first = '', last, more, unit = '' } = parts.groups ?? {};
  const n = parseNumber(first.trim());
  const name = unit === '' ? 'pcs' : (units.get(unit.trimStart()) ?? null);
  if (n === null || name === null || !ascends(n, last)) return null;
  // `x4` counts; `2/4` pieces may be one number for each of two variants.
  if (name === 'pcs' ? isFraction(first) : sign !== undefined) return null;
  return { n, unit: name, approximate: lead !== undefined || last !== undefined || more !== undefined };
}

/** The unit of an amount by a word of it, such as `cm` for `centimetres`; null where the word is none. */
export function amountUnitOf(word: string): string | null {
  return units.get(plainForm(word).toLowerCase()) ?? null;
}

/** How many spares stand apart from an amount, as in `10 (+4)` or `6 (2 spare)`; null where none do. */
export function parseSpares(text: string): number | null {
  if (text.length > longest) return null;
  const found = /\((?:\+ ?(\d{1,4})(?: spares?)?|(\d{1,4}) spares?)\)$/u.exec(plainForm(text).toLowerCase());
  return found === null ? null : Number(found[1] ?? found[2]);
}

function ascends(n: number, last: string | undefined): boolean {
  if (last === undefined) return true;
  const end = parseNumber(last.replace(/^ ?(?:-|–|—|to) ?/u, ''));
  return end !== null && end > n;
}

const { source: _source, asNeeded: _asNeeded, about, atLeast, ...words } = table;
const leads = [...about, ...atLeast].sort((a, b) => b.length - a.length);
const units: ReadonlyMap<string, string> = new Map(
  Object.entries(words).flatMap(([unit, spellings]) => spellings.map((spelling) => [spelling, unit] as const)),
);
