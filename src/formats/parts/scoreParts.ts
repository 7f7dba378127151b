import type { TextTable } from '../csv/textTable.ts';
import { type PartColumns, partColumnsOf } from './partColumns.ts';
import type { PartMeaning } from './readPartHeader.ts';

/** How much each kind of column speaks for a parts list. */
const weights: Partial<Record<PartMeaning, number>> = {
  reference: 3,
  quantity: 3,
  description: 2,
  value: 2,
  mpn: 2,
  package: 1.5,
  price: 1.5,
  supplier: 1,
  supplierNumber: 1,
  manufacturer: 1,
  rating: 1,
};
const otherWeight = 0.5;
/** A table with this weight is a parts list beyond doubt, such as one of references, quantities and values. */
const fullWeight = 8;
/** From here on a table is read as a parts list: a name and a quantity reach it. */
export const partsThreshold = 0.5;

/** How well a table's columns make a parts list, from 0 to 1. */
export function scoreParts(table: TextTable, columns: PartColumns = partColumnsOf(table)): number {
  const { headers, uses } = columns;
  const has = (...meanings: PartMeaning[]) => meanings.some((meaning) => uses.has(meaning));
  const names = has('reference', 'description', 'value', 'mpn');
  const counts = has('reference', 'quantity', 'price', 'total');
  if (!names || !counts || placesParts(columns)) return 0;
  const named = headers.filter(({ text }) => text !== '').length;
  const known = [...uses.values()].reduce((sum, all) => sum + all.length, 0);
  if (known < 2 || known < named / 4) return 0;
  let weight = 0;
  for (const [meaning, [first = 0]] of uses) {
    weight += (weights[meaning] ?? otherWeight) * Math.max(0.9, headers[first]?.certainty ?? 0);
  }
  return Math.min(1, weight / fullWeight);
}

/** A table for the machine that places parts: references with positions and angles. Nobody buys from it. */
function placesParts({ headers }: PartColumns): boolean {
  const has = (pattern: RegExp) => headers.some(({ words }) => pattern.test(words));
  return has(/^(?:rot|rotation|angle|theta)$/) && has(/^(?:x|mid x|pos x|center x|centre x|ref x|x pos|coord x)$/);
}
