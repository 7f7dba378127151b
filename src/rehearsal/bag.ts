import type { Part, PartId, Ref } from '#core/part.ts';
import type { PartUse } from '#core/step.ts';
import { inUnit, round, type Stock, stockOf } from './amounts.ts';

/** What happened when the builder reached into the bag. */
export type Taking =
  | { readonly short: false }
  | { readonly short: true; readonly had: number; readonly wanted: number };

/** The builder's bag of parts. */
export interface Bag {
  take(use: PartUse, part: Part, counted: boolean): Taking;
  putBack(use: PartUse, part: Part): void;
  /**
   * What is left now, by part, to be looked at later: what is in the bag is told before and after each step, and a
   * step changes little of it. Parts of unknown amount are not listed.
   */
  contents(): () => Readonly<Record<PartId, number>>;
  /** What was not taken; 0 where amounts are not exact or cannot be compared. */
  left(part: Part): number;
}

interface Taken {
  readonly stock: Stock | null;
  /** References taken up. */
  readonly refs: Set<Ref>;
  /** Pieces or units taken. */
  n: number;
  exact: boolean;
}

/** Fills a bag with all fitted parts of the list. */
export function fillBag(parts: readonly Part[]): Bag {
  const fitted = parts.filter((part) => part.fitted);
  const records = new Map<PartId, Taken>(
    fitted.map((part) => {
      const stock = stockOf(part);
      return [part.id, { stock, refs: new Set(), n: 0, exact: stock?.exact ?? false }];
    }),
  );
  const full = [...records].flatMap(([id, record]) => leftOf(id, record));
  const changes: (readonly [PartId, number])[] = [];
  return {
    take(use, part, counted) {
      const record = records.get(part.id);
      if (record === undefined || isTheSamePiece(use, record, counted)) return { short: false };
      if (use.ref !== null) record.refs.add(use.ref);
      const wanted = record.stock === null ? null : inUnit(use.amount, record.stock.unit);
      if (wanted === null || use.amount.approximate) {
        record.exact = false;
        return { short: false };
      }
      const had = remaining(record);
      record.n = round(record.n + wanted);
      changes.push(...leftOf(part.id, record));
      return record.exact && wanted > had ? { short: true, had: Math.max(0, had), wanted } : { short: false };
    },
    putBack(use, part) {
      const record = records.get(part.id);
      if (record === undefined) return;
      if (use.ref !== null) record.refs.delete(use.ref);
      record.n = round(Math.max(0, record.n - (inUnit(use.amount, record.stock?.unit ?? '') ?? 0)));
      changes.push(...leftOf(part.id, record));
    },
    contents() {
      const until = changes.length;
      let told: Readonly<Record<PartId, number>> | null = null;
      return () => {
        told ??= Object.fromEntries([...full, ...changes.slice(0, until)]);
        return told;
      };
    },
    left(part) {
      const record = records.get(part.id);
      return record === undefined || !record.exact ? 0 : Math.max(0, remaining(record));
    },
  };
}

/**
 * A part that is named again is not taken again: a reference names one piece, and so does the name of a part
 * of which there is only one, unless the step counts it. What is cut to length is cut each time.
 */
function isTheSamePiece(use: PartUse, record: Taken, counted: boolean): boolean {
  if (use.amount.unit !== 'pcs') return false;
  if (use.ref !== null) return record.refs.has(use.ref);
  const isSingle = record.stock?.unit === 'pcs' && record.stock.n === 1 && use.amount.n === 1;
  return isSingle && !counted && record.n >= 1;
}

/** None where the list does not say how much there is. */
function leftOf(id: PartId, record: Taken): (readonly [PartId, number])[] {
  return record.stock === null ? [] : [[id, Math.max(0, remaining(record))]];
}

function remaining(record: Taken): number {
  return round((record.stock?.n ?? 0) - record.n);
}
