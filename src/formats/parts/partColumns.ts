import type { PartColumn } from '#core/part.ts';
import type { TextTable } from '../csv/textTable.ts';
import { fits, shareOfRefForms, shareOfRefs } from './columnContents.ts';
import { countsRows, type PartHeader, type PartMeaning, readPartHeader } from './readPartHeader.ts';

/** Which columns of a table mean what. */
export interface PartColumns {
  readonly headers: readonly PartHeader[];
  /** Columns of each meaning, the most telling first. */
  readonly uses: ReadonlyMap<PartMeaning, readonly number[]>;
  /** `summed`: one column for each variant of the build; `ordered`: what was bought, spares and all. */
  readonly quantityIs: 'stated' | 'summed' | 'ordered';
  /** Columns that only count rows. */
  readonly rowNumbers: ReadonlySet<number>;
}

/** Rows whose cells are looked at to tell meanings apart. */
const rowsLookedAt = 60;

/** Finds the meaning of each column from its header and, where that leaves a choice, from the cells below. */
export function partColumnsOf(table: TextTable): PartColumns {
  const headers = table.header.map(({ text }) => readPartHeader(text));
  const cells = headers.map((_, column) => cellsOf(table, column));
  const isCount = headers.map((header, column) => countsRows(header) || runsFromOne(cells[column] ?? []));
  const told = headers.map((header, column) =>
    isCount[column] && !header.meanings.includes('quantity') ? null : meaningOf(header, cells[column] ?? []),
  );
  const found = withReferences(told, cells);
  const byMeaning = new Map<PartMeaning, number[]>();
  for (const [column, meaning] of found.entries()) {
    if (meaning !== null) byMeaning.set(meaning, [...(byMeaning.get(meaning) ?? []), column]);
  }
  const quantity = quantityColumns(byMeaning.get('quantity') ?? [], headers);
  const uses = new Map([...byMeaning].map(([meaning, columns]) => [meaning, chosen(meaning, columns, headers, cells)]));
  if (quantity.columns.length > 0) uses.set('quantity', quantity.columns);
  settlePrices(uses, headers);
  const rowNumbers = headers.flatMap((header, column) =>
    isCount[column] && found[column] === null && !header.meanings.includes('quantity') ? [column] : [],
  );
  return { headers, uses, quantityIs: quantity.is, rowNumbers: new Set(rowNumbers) };
}

/** 1, 2, 3 …: a number of the row, whatever the header calls it. */
function runsFromOne(cells: readonly string[]): boolean {
  return cells.length >= 2 && cells.every((text, index) => text.replace(/\.$/, '') === String(index + 1));
}

/** Where no header speaks of references, a column that holds nothing else is one, if another tells what the parts are. */
function withReferences(
  told: readonly (PartMeaning | null)[],
  cells: readonly (readonly string[])[],
): readonly (PartMeaning | null)[] {
  if (told.includes('reference')) return told;
  const column = cells.findIndex((each) => each.length >= 2 && shareOfRefs(each) >= 0.8);
  const rest = told.filter((_, index) => index !== column);
  const tellsMore = rest.some((meaning) => meaning === 'description' || meaning === 'value' || meaning === 'mpn');
  return column < 0 || !tellsMore ? told : told.map((meaning, index) => (index === column ? 'reference' : meaning));
}

/** The meaning of one column as a parts list tells it to others; a unit is told as part of the quantity. */
export function meaningOfColumn(columns: PartColumns, column: number): PartColumn | null {
  for (const [meaning, all] of columns.uses) if (all.includes(column)) return meaning === 'unit' ? 'quantity' : meaning;
  return null;
}

/** Filled cells of a column, headers that are repeated on a new page left out. */
function cellsOf(table: TextTable, column: number): string[] {
  const header = table.header[column]?.text.trim();
  return table.rows
    .slice(0, rowsLookedAt)
    .map((row) => row[column]?.text.trim() ?? '')
    .filter((text) => text !== '' && text !== header);
}

function meaningOf(header: PartHeader, cells: readonly string[]): PartMeaning | null {
  // 'Ref' heads references of any letters, unless it heads the order numbers of a shop.
  if (header.words === 'ref' && shareOfRefForms(cells) >= 0.5) return 'reference';
  const meaning = header.meanings.find((each) => fits(each, cells, header.certainty >= 0.8));
  if (meaning !== undefined) return meaning;
  const isUnknown = header.meanings.length === 0 && /^\p{L}+$/u.test(header.words) && !countsRows(header);
  return isUnknown && fits('supplierNumber', cells, false) ? 'supplierNumber' : null;
}

const manyAllowed: readonly PartMeaning[] = [
  'value',
  'rating',
  'supplier',
  'supplierNumber',
  'link',
  'datasheet',
  'note',
  'fitted',
  'price',
  'total',
];

function chosen(
  meaning: PartMeaning,
  columns: readonly number[],
  headers: readonly PartHeader[],
  cells: readonly (readonly string[])[],
): readonly number[] {
  if (manyAllowed.includes(meaning)) return columns;
  // The name of a thing and its description are both kept: 'SHT31' and 'temperature sensor'.
  if (meaning === 'description') return columns.slice(0, 2);
  if (meaning === 'reference') {
    const rated = columns.map((column) => ({
      column,
      share: shareOfRefs(cells[column] ?? []) + 0.1 * (headers[column]?.certainty ?? 0),
    }));
    return rated
      .sort((a, b) => b.share - a.share || a.column - b.column)
      .slice(0, 1)
      .map(({ column }) => column);
  }
  return columns.slice(0, 1);
}

/** For one build, for each variant of it, in all, or as ordered: the column that says what one build takes. */
function quantityColumns(
  columns: readonly number[],
  headers: readonly PartHeader[],
): { columns: readonly number[]; is: PartColumns['quantityIs'] } {
  const kindOf = (column: number) => quantityKind(headers[column]);
  const of = (kind: ReturnType<typeof quantityKind>) => columns.filter((column) => kindOf(column) === kind);
  for (const kind of ['one', 'plain'] as const)
    if (of(kind).length > 0) return { columns: of(kind).slice(0, 1), is: 'stated' };
  const variants = of('variant');
  if (variants.length > 0) return { columns: variants, is: variants.length > 1 ? 'summed' : 'stated' };
  if (of('all').length > 0) return { columns: of('all').slice(0, 1), is: 'stated' };
  return { columns: of('ordered').slice(0, 1), is: of('ordered').length > 0 ? 'ordered' : 'stated' };
}

function quantityKind(header: PartHeader | undefined): 'one' | 'plain' | 'variant' | 'all' | 'ordered' {
  const all = `${header?.words ?? ''} ${header?.inBrackets ?? ''}`;
  if (/\bper (?:board|unit|kit|build|pcb|device|set)\b/.test(all)) return 'one';
  if (/\border/.test(all)) return 'ordered';
  if (/\b(?:total|all)\b/.test(all)) return 'all';
  return (header?.inBrackets ?? '') === '' ? 'plain' : 'variant';
}

/** Where a unit price stands beside it, a plain 'price' is that of the whole line. */
function settlePrices(uses: Map<PartMeaning, readonly number[]>, headers: readonly PartHeader[]): void {
  const prices = uses.get('price') ?? [];
  const single = prices.filter((column) =>
    /\b(?:unit|each|einzel|unitaire|unitario|per)\b/.test(headers[column]?.words ?? ''),
  );
  const [price] = single.length > 0 ? single : prices;
  const totals = uses.get('total') ?? [];
  const plain = single.length > 0 && totals.length === 0 ? prices.filter((column) => !single.includes(column)) : [];
  const [total] = [...totals, ...plain];
  if (price !== undefined) uses.set('price', [price]);
  if (total !== undefined) uses.set('total', [total]);
}
