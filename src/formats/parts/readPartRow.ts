import type { Part, PartColumn, PartLink, Price } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { QuantityKind } from '#core/quantity.ts';
import type { SourceText } from '#core/sourceText.ts';
import { parseDate } from '#notation/dates.ts';
import { parseMoney } from '#notation/money.ts';
import { parseRefs } from '#notation/refs.ts';
import { placeOfCell, placeOfRow, type TableCell } from '../csv/textTable.ts';
import { carriesNotFittedMark, isFitted, isNotFittedMark } from './notFitted.ts';
import { cellsOf, type FilledCell } from './partCells.ts';
import { meaningOfColumn, type PartColumns } from './partColumns.ts';
import type { PartIds } from './partIds.ts';
import { linksIn } from './partLinks.ts';
import { readPartAmount } from './readPartAmount.ts';
import type { PartMeaning } from './readPartHeader.ts';
import { readPartValue, type ValueCellText } from './readPartValue.ts';
import { packSize, parsePrice, priceOf } from './readPrice.ts';

/** What a row is read with. */
export interface RowContext {
  readonly source: SourceText;
  readonly columns: PartColumns;
  readonly ids: PartIds;
  /** Heading of the group of rows that the row stands in. */
  readonly section: string | null;
}

/** Reads one row of a parts list. Cells that say something else than their column promises are problems. */
export function readPartRow(row: readonly TableCell[], context: RowContext): { part: Part; problems: Problem[] } {
  const reader = new RowReader(row, context);
  const part = reader.part();
  return { part, problems: reader.problems };
}

class RowReader {
  readonly problems: Problem[] = [];
  private readonly row: readonly TableCell[];
  private readonly context: RowContext;

  constructor(row: readonly TableCell[], context: RowContext) {
    this.row = row;
    this.context = context;
  }

  part(): Part {
    const refs = this.refs();
    const description = this.description(refs);
    const { value, ratings, package: body } = this.value(refs);
    const section = this.text('section') ?? this.context.section;
    const amount = this.amount(refs);
    return {
      id: this.context.ids.next(refs, description, section),
      refs,
      amount,
      description,
      value,
      ratings,
      package: this.text('package') ?? body,
      mpn: this.text('mpn'),
      supplier: this.supplier(),
      links: this.links(),
      price: this.price(amount.is === 'unknown' ? null : amount.claims[0].value.n),
      substitution: this.text('substitution'),
      note: this.note(),
      fitted: this.fitted(),
      section,
      other: this.other(),
      place: placeOfRow(this.context.source, this.row),
      cells: this.places(),
    };
  }

  private refs(): string[] {
    const [cell] = this.cells('reference');
    if (cell === undefined) return [];
    const { refs, problem } = parseRefs(cell.text);
    // A name such as 'PCB' in the place of a reference is no slip.
    if (problem !== null && (refs.length > 0 || /\d/.test(cell.text))) {
      this.note_(cell, problem, 'Write each reference as letters and a number, such as R1, with a comma between.');
    }
    return refs;
  }

  private description(refs: readonly string[]): string {
    const [first, second] = this.cells('description').map(({ text }) => text);
    if (first !== undefined) {
      return second === undefined || first.toLowerCase().includes(second.toLowerCase()) ? first : `${first}, ${second}`;
    }
    const named = refs.length === 0 ? this.text('reference') : null;
    return (
      this.text('value') ??
      this.text('mpn') ??
      named ??
      this.text('package') ??
      this.text('supplierNumber') ??
      refs.join(', ')
    );
  }

  private value(refs: readonly string[]): ReturnType<typeof readPartValue> {
    const [described] = this.cells('description');
    return readPartValue(
      this.valueCells('value').filter(({ text }) => !isNotFittedMark(text)),
      this.valueCells('rating'),
      described === undefined ? null : { text: described.text, kind: null, place: this.place(described) },
      refs,
    );
  }

  private valueCells(meaning: PartMeaning): ValueCellText[] {
    return this.cells(meaning).map((cell) => ({
      text: cell.text,
      kind: this.kindOfHeader(cell),
      place: this.place(cell),
    }));
  }

  private kindOfHeader({ column }: FilledCell): QuantityKind | null {
    const words = this.context.columns.headers[column]?.words;
    return words === 'resistance' || words === 'capacitance' || words === 'inductance' ? words : null;
  }

  private amount(refs: readonly string[]): Part['amount'] {
    const [reference] = this.cells('reference');
    const { amount, unread } = readPartAmount({
      refs,
      refsPlace: reference === undefined ? null : this.place(reference),
      quantity: this.cells('quantity').map((cell) => ({ text: cell.text, place: this.place(cell) })),
      unit: this.text('unit'),
      isOrdered: this.context.columns.quantityIs === 'ordered',
    });
    for (const { text, place } of unread) {
      if (isNotFittedMark(text) || /^(?:\?+|tbd|x)$/i.test(text)) continue;
      this.problems.push({
        place,
        message: `'${text}' was expected to be a quantity, such as 4, 30 cm or 'as needed'.`,
        remedy: 'Write the number first, then its unit.',
      });
    }
    return amount;
  }

  /** The shops' names with their numbers for the part; a name may stand in the header of its number. */
  private supplier(): string | null {
    const names = this.cells('supplier');
    const numbers = this.cells('supplierNumber');
    const pairs = Array.from({ length: Math.max(names.length, numbers.length) }, (_, i) => {
      const number = numbers[i];
      const name =
        names[i]?.text ??
        (number === undefined ? null : shopInHeader(this.context.columns.headers[number.column]?.text));
      return [name, number?.text].filter((word) => word !== null && word !== undefined).join(' ');
    });
    return pairs.length === 0 ? null : pairs.join('; ');
  }

  private links(): PartLink[] {
    const links = [
      ...this.cells('link').flatMap(({ cell, text }) => linksIn(this.written(cell) || text, 'link')),
      ...this.cells('datasheet').flatMap(({ cell, text }) => linksIn(this.written(cell) || text, 'datasheet')),
      ...(['supplier', 'supplierNumber', 'description', 'mpn', 'value', 'note'] as const).flatMap((meaning) =>
        this.cells(meaning).flatMap(({ cell }) =>
          linksIn(this.written(cell), meaning.startsWith('supplier') ? 'link' : 'text'),
        ),
      ),
    ];
    const seen = new Set<string>();
    return links.filter(({ url }) => !seen.has(url) && seen.add(url));
  }

  private price(count: number | null): Price | null {
    const dateText = this.text('date');
    const date = dateText === null ? null : parseDate(dateText);
    const [cell] = this.cells('price');
    const read = cell === undefined ? null : parsePrice(cell.text, this.currency(cell));
    if (cell !== undefined && read !== null) {
      const pack = read.per > 1 ? read.per : (this.packSizeBeside(cell) ?? 1);
      return priceOf({ ...read, per: pack }, date);
    }
    if (cell !== undefined && /\d/.test(cell.text)) {
      this.note_(cell, `'${cell.text}' was expected to be a price, such as 0.82 or € 0.82.`, 'Write one sum of money.');
    }
    const [total] = this.cells('total');
    const sum = total === undefined ? null : parseMoney(total.text, this.currency(total));
    return sum === null || count === null || count <= 0 ? null : priceOf({ ...sum, per: count }, date);
  }

  /** Pieces in the pack that the price is for, as its header says, or, where that names no unit, a note. */
  private packSizeBeside({ column }: FilledCell): number | null {
    const header = this.context.columns.headers[column];
    const isOfOne = /\b(?:unit|each|piece|einzel|unitaire|unitario)\b/.test(header?.words ?? '');
    const beside = isOfOne ? [] : [this.text('unit') ?? '', ...this.cells('note').map(({ text }) => text)];
    const texts = [header?.text ?? '', ...beside];
    for (const text of texts) {
      const pack = packSize(text);
      if (pack !== null) return pack.size;
    }
    return null;
  }

  private currency({ column }: FilledCell): string | null {
    const stated = this.text('currency');
    const named = stated === null ? null : (parseMoney(`1 ${stated}`)?.currency ?? null);
    return named ?? this.context.columns.headers[column]?.currency ?? null;
  }

  private fitted(): boolean {
    const { headers } = this.context.columns;
    for (const { column, text } of this.cells('fitted')) {
      const isNegative = /^(?:dn|do not|not|no)\b|^dn[pfi]$/.test(headers[column]?.words ?? '');
      if (isFitted(text, isNegative) === false) return false;
    }
    if (this.cells('quantity').some(({ text }) => isNotFittedMark(text))) return false;
    if (this.cells('note').some(({ text }) => isNotFittedMark(text) && !/^n\.?c/i.test(text))) return false;
    return !this.cells('value').some(({ text }) => carriesNotFittedMark(text));
  }

  private note(): string | null {
    const notes = this.cells('note').map(({ text }) => text);
    return notes.length === 0 ? null : notes.join('; ');
  }

  /** Every filled cell whose column has no meaning, and a second body such as a footprint beside the package, by header. */
  private other(): Record<string, string> {
    const other = new Map<string, string>();
    const [body] = this.cells('package');
    for (const [column, cell] of this.row.entries()) {
      const text = cell.text.trim();
      const meaning = meaningOfColumn(this.context.columns, column);
      if (text === '' || (meaning !== null && (meaning !== 'package' || column === body?.column))) continue;
      const header = this.context.columns.headers[column]?.text ?? '';
      other.set(freeName(header === '' ? `column ${column + 1}` : header, other), text);
    }
    return Object.fromEntries(other);
  }

  private places(): Part['cells'] {
    const places: Partial<Record<PartColumn, TextPlace>> = {};
    for (const meaning of this.context.columns.uses.keys()) {
      const [cell] = this.cells(meaning);
      if (cell !== undefined && meaning !== 'unit') places[meaning] = this.place(cell);
    }
    return places;
  }

  private cells(meaning: PartMeaning): FilledCell[] {
    return cellsOf(this.row, this.context.columns, meaning);
  }

  private text(meaning: PartMeaning): string | null {
    return this.cells(meaning)[0]?.text ?? null;
  }

  private place({ cell }: FilledCell): TextPlace {
    return placeOfCell(this.context.source, cell);
  }

  /** The cell as it stands in the file: there a link still has its address. */
  private written({ span }: TableCell): string {
    return this.context.source.text.slice(span[0], span[1]);
  }

  private note_(cell: FilledCell, message: string, remedy: string): void {
    this.problems.push({ place: this.place(cell), message, remedy });
  }
}

/** The shop that a header such as 'Lintel #' names; null for one such as 'Supplier part number'. */
function shopInHeader(header = ''): string | null {
  const [name = ''] = header.replace(/^oc[_ ]/i, '').split(/[\s_#.]+/);
  const isGeneral = /^(?:supplier|vendor|distributor|order|stock|catalog|shop|sku|ref|part|best|artikel)/i.test(name);
  return isGeneral || name === '' ? null : name;
}

function freeName(name: string, taken: ReadonlyMap<string, string>): string {
  let free = name;
  for (let n = 2; taken.has(free); n++) free = `${name} (${n})`;
  return free;
}
