import { amountUnitOf, parseAmount } from '#notation/amount.ts';
import { parseMoney } from '#notation/money.ts';
import { parseRefs, refClass } from '#notation/refs.ts';
import { parseValueCell } from '#notation/value.ts';
import { isNotFittedMark } from './notFitted.ts';
import type { PartMeaning } from './readPartHeader.ts';

/**
 * Whether the cells of a column, empty ones left out, bear out a meaning that its header allows. A header that has no
 * other meaning is believed unless the cells speak against it.
 */
export function fits(meaning: PartMeaning, cells: readonly string[], isSure: boolean): boolean {
  switch (meaning) {
    case 'reference':
      return isSure || shareOfRefs(cells) >= 0.6;
    case 'quantity':
      return (
        share(cells, (text) => parseAmount(text) !== null || isNotFittedMark(text)) >= (isSure ? 0.2 : 0.6) ||
        (isSure && cells.length === 0)
      );
    case 'value':
      return isSure || share(cells, startsWithValue) >= 0.3;
    case 'unit':
      return share(cells, (text) => amountUnitOf(text) !== null) >= 0.5;
    case 'fitted':
      return isSure || cells.some(isNotFittedMark);
    case 'total':
    case 'price':
      return isSure || share(cells, (text) => parseMoney(text) !== null) >= 0.5;
    case 'description':
      return isSure || share(cells, (text) => /\p{L}{2}/u.test(text)) >= 0.5;
    case 'supplierNumber':
      return isSure || share(cells, (text) => /^[A-Z]{1,3}\d{4,}$/.test(text)) >= 0.8;
    default:
      return true;
  }
}

/** Share of cells that have the form of references, whatever their letters. Order numbers have more digits. */
export function shareOfRefForms(cells: readonly string[]): number {
  return share(cells, (text) => {
    const { refs, problem } = parseRefs(text);
    return problem === null && refs.length > 0 && refs.every((ref) => /^[A-Z]+\d{1,3}$/.test(ref));
  });
}

/** Share of cells that list references whose letters stand for a class of parts: 'ESP32' is a name, 'R1' is none. */
export function shareOfRefs(cells: readonly string[]): number {
  return share(cells, (text) => {
    const { refs, problem } = parseRefs(text);
    return problem === null && refs.some((ref) => refClass(ref) !== null);
  });
}

function startsWithValue(text: string): boolean {
  return /^[\d.±]/.test(text) && parseValueCell(text).value !== null;
}

function share(cells: readonly string[], holds: (text: string) => boolean): number {
  return cells.length === 0 ? 0 : cells.filter(holds).length / cells.length;
}
