import type { QuantityKind } from '#core/quantity.ts';
import { findQuantities } from '#notation/value.ts';

/** What a reading may be, from `low` to `high` in the unit of its kind; without bounds where none is stated. */
export interface ReadingRange {
  readonly kind: QuantityKind;
  readonly low: number;
  readonly high: number;
}

/**
 * Reads an expectation such as `> 1 kΩ`, `5.0 V ± 0.25 V`, `5 V ± 5 %`, `3.2 V to 3.4 V` or `about 5 V`; a value alone
 * leaves a tenth to either side. Null where it states no quantity, or more of them than these forms have.
 */
export function readingRange(expect: string): ReadingRange | null {
  const [stated = '', spread] = expect.split('±');
  const values = findQuantities(stated.replace(/(?<=\d)\s*[–—]\s*(?=\d)/u, ' ')).map(({ quantity }) => quantity);
  const [first, second] = values;
  if (first === undefined || values.length > 2 || expect.split('±').length > 2) return null;
  const { kind, si } = first;
  if (spread !== undefined) {
    const by = spreadOf(spread, kind, si);
    return by === null || second !== undefined ? null : { kind, low: si - by, high: si + by };
  }
  if (second !== undefined) {
    return second.kind === kind && /\b(?:to|and|bis|und)\b/iu.test(stated) ? { kind, low: si, high: second.si } : null;
  }
  if (/[>≥]|\b(?:at least|more than|over|above)\b/iu.test(stated)) return { kind, low: si, high: Infinity };
  if (/[<≤]|\b(?:at most|less than|under|below)\b/iu.test(stated)) return { kind, low: -Infinity, high: si };
  if (/\b(?:not|no|short|open)\b/iu.test(stated)) return null;
  return { kind, low: si - Math.abs(si) / 10, high: si + Math.abs(si) / 10 };
}

/** `0.25 V`, or a share such as `5 %`. */
function spreadOf(text: string, kind: QuantityKind, si: number): number | null {
  const percent = /^\s*(\d+(?:[.,]\d+)?)\s*%/u.exec(text)?.[1];
  if (percent !== undefined) return (Math.abs(si) * Number(percent.replace(',', '.'))) / 100;
  const found = findQuantities(text.trim())[0]?.quantity;
  return found?.kind === kind ? Math.abs(found.si) : null;
}
