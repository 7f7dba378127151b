import type { Part, PartId, Ref } from '#core/part.ts';
import type { PartUse } from '#core/step.ts';
import { inUnit, round, type Stock, stockOf } from './amounts.ts';
import { sameBuilder } from './script.ts';

/** What happened when the builder reached into the bag. */
export type Taking =
  | { readonly short: false }
  | { readonly short: true; readonly had: number; readonly wanted: number };

/** The builder's bag of parts. Alternatives (variants) each draw on the whole bag. */
export interface Bag {
  take(use: PartUse, part: Part, counted: boolean, variant: string | null): Taking;
  putBack(use: PartUse, part: Part, variant: string | null): void;
  /** What is left for a builder of a variant, by part. Parts of unknown amount are not listed. */
  contents(variant: string | null): Readonly<Record<PartId, number>>;
  /** What no builder of any variant has taken; 0 where amounts are not exact or cannot be compared. */
  left(part: Part): number;
}

interface Taken {
  readonly stock: Stock | null;
  /** Pieces or units taken, by variant; '' for those that everyone takes. */
  readonly byVariant: Map<string, number>;
  /** References taken up, with the variant that took them. */
  readonly refs: Map<Ref, string | null>;
  exact: boolean;
}

/** Fills a bag with all fitted parts of the list. */
export function fillBag(parts: readonly Part[]): Bag {
  const fitted = parts.filter((part) => part.fitted);
  const records = new Map<PartId, Taken>(
    fitted.map((part) => {
      const stock = stockOf(part);
      return [part.id, { stock, byVariant: new Map(), refs: new Map(), exact: stock?.exact ?? false }];
    }),
  );
  return {
    take(use, part, counted, variant) {
      const record = records.get(part.id);
      if (record === undefined) return { short: false };
      if (isTheSamePiece(use, record, counted, variant)) return { short: false };
      if (use.ref !== null) record.refs.set(use.ref, variant);
      const wanted = record.stock === null ? null : inUnit(use.amount, record.stock.unit);
      if (wanted === null || use.amount.approximate) {
        record.exact = false;
        draw(record, 0, variant);
        return { short: false };
      }
      const had = remaining(record, variant);
      draw(record, wanted, variant);
      return record.exact && wanted > had ? { short: true, had: Math.max(0, had), wanted } : { short: false };
    },
    putBack(use, part, variant) {
      const record = records.get(part.id);
      if (record === undefined) return;
      if (use.ref !== null) record.refs.delete(use.ref);
      giveBack(record, inUnit(use.amount, record.stock?.unit ?? '') ?? 0, variant);
    },
    contents(variant) {
      const bag: Record<PartId, number> = {};
      for (const [id, record] of records) if (record.stock !== null) bag[id] = Math.max(0, remaining(record, variant));
      return bag;
    },
    left(part) {
      const record = records.get(part.id);
      if (record?.stock == null || !record.exact) return 0;
      const taken = [...record.byVariant.values()].reduce((sum, n) => sum + n, 0);
      return Math.max(0, round(record.stock.n - taken));
    },
  };
}

/**
 * A part that is named again is not taken again: a reference names one piece, and so does the name of a part
 * of which there is only one, unless the step counts it. What is cut to length is cut each time.
 */
function isTheSamePiece(use: PartUse, record: Taken, counted: boolean, variant: string | null): boolean {
  if (use.amount.unit !== 'pcs') return false;
  if (use.ref !== null) {
    const before = record.refs.get(use.ref);
    return before !== undefined && sameBuilder(before, variant);
  }
  const isSingle = record.stock?.unit === 'pcs' && record.stock.n === 1 && use.amount.n === 1;
  return isSingle && !counted && drawnBy(record, variant) >= 1;
}

function remaining(record: Taken, variant: string | null): number {
  return round((record.stock?.n ?? 0) - drawnBy(record, variant));
}

/** What a builder of a variant has taken so far; one of no particular variant counts the thirstiest. */
function drawnBy({ byVariant }: Taken, variant: string | null): number {
  const common = byVariant.get('') ?? 0;
  if (variant !== null) return common + (byVariant.get(variant) ?? 0);
  return common + Math.max(0, ...[...byVariant].filter(([name]) => name !== '').map(([, n]) => n));
}

function draw(record: Taken, n: number, variant: string | null): void {
  const key = variant ?? '';
  record.byVariant.set(key, round((record.byVariant.get(key) ?? 0) + n));
}

/** Nobody gives back more than was taken: first what everyone took, then what the builders of a variant did. */
function giveBack(record: Taken, n: number, variant: string | null): void {
  const { byVariant } = record;
  const ofAll = Math.min(n, byVariant.get('') ?? 0);
  byVariant.set('', round((byVariant.get('') ?? 0) - ofAll));
  for (const [name, taken] of byVariant) {
    if (name !== '' && sameBuilder(name, variant)) byVariant.set(name, round(Math.max(0, taken - (n - ofAll))));
  }
}
