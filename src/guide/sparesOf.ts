import type { Part } from '#core/part.ts';
import type { Path } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { parseAmount, parseSpares } from '#notation/amount.ts';
import { writtenCell } from './writtenCell.ts';

/** Spare pieces that the list names beside the amount, or in a column of that name; null where it names none. */
export function sparesOf(part: Part, texts: ReadonlyMap<Path, SourceText>): number | null {
  const beside = parseSpares(writtenCell(part, 'quantity', texts));
  if (beside !== null) return beside;
  const [, column = ''] = Object.entries(part.other).find(([header]) => /^spares?$/iu.test(header.trim())) ?? [];
  const counted = parseAmount(column);
  return counted !== null && counted.unit === 'pcs' && counted.n > 0 ? counted.n : null;
}
