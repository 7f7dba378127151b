import type { Quantity, QuantityKind } from '#core/quantity.ts';
import { capacitorCodeTolerance, parseCapacitorCode } from './capacitorCode.ts';
import { formatQuantity } from './formatQuantity.ts';
import { isPackage, looksLikeNumber } from './packageCode.ts';
import { parseValue, type ValueHint } from './parseValue.ts';

/** What a cell says of a part: its value, what it is rated for, and its body. */
export interface ValueCell {
  readonly value: Quantity | null;
  readonly ratings: readonly Quantity[];
  readonly package: string | null;
}

/** Longer cells are descriptions; nothing beyond is read. */
const longest = 400;

/** Kinds that name a part, as against those that it is rated for. */
const naming: readonly QuantityKind[] = ['resistance', 'capacitance', 'inductance', 'frequency', 'charge', 'energy'];

/**
 * A cell that holds a value, ratings and a package in any order, such as `22u/25V`, `100nF 0603 X7R 50V 10%` or
 * `10k 1% 1/4W`. The value is the first quantity of the hinted kind, else the first that names a part, else, without
 * a hint, what the cell begins with. All other quantities are ratings. Words that mean nothing here are passed over.
 */
export function parseValueCell(text: string, hint: ValueHint = {}): ValueCell {
  const whole = isPackage(text.trim()) ? null : parseValue(text, hint);
  const words =
    whole !== null && (hint.kind === undefined || whole.kind === hint.kind)
      ? [{ quantities: [whole, ...toleranceAfterCode(text, hint)], packages: [] }]
      : wordsRead(text.slice(0, longest), hint);
  const quantities = words.flatMap((word) => word.quantities);
  const value = valueAmong(quantities, words[0]?.quantities[0], hint);
  const [body] = words.flatMap((word) => word.packages);
  return {
    value,
    ratings: quantities.filter((quantity) => quantity !== value),
    package: body === undefined || (quantities.length === 0 && looksLikeNumber(body)) ? null : body,
  };
}

function valueAmong(all: readonly Quantity[], leading: Quantity | undefined, hint: ValueHint): Quantity | null {
  return (
    all.find((quantity) => quantity.kind === hint.kind) ??
    all.find((quantity) => naming.includes(quantity.kind)) ??
    (hint.kind === undefined && leading?.kind !== 'tolerance' ? leading : undefined) ??
    null
  );
}

/** What one word, or a number and the unit after it, says. */
interface WordRead {
  readonly quantities: readonly Quantity[];
  readonly packages: readonly string[];
}

function wordsRead(text: string, hint: ValueHint): readonly WordRead[] {
  const words = text.split(/[\s()[\]]+|[,;](?=\s|$)/u).filter((word) => word !== '');
  const read: WordRead[] = [];
  for (let i = 0; i < words.length; ) {
    const joined = joinedQuantity(words, i, hint);
    read.push(joined === null ? wordRead(words[i] ?? '', hint) : { quantities: [joined.quantity], packages: [] });
    i += joined?.words ?? 1;
  }
  return read;
}

/** A quantity of two or three words, of which only the first holds digits, such as `4.7 k ohm`. */
function joinedQuantity(
  words: readonly string[],
  at: number,
  hint: ValueHint,
): { words: number; quantity: Quantity } | null {
  for (const count of [3, 2]) {
    const more = words.slice(at + 1, at + count);
    if (more.length !== count - 1 || more.some((word) => /\d/u.test(word))) continue;
    const quantity = parseValue([words[at], ...more].join(' '), hint);
    if (quantity !== null) return { words: count, quantity };
  }
  return null;
}

function wordRead(word: string, hint: ValueHint): WordRead {
  if (isPackage(word)) return { quantities: [], packages: [word] };
  const whole = parseValue(word, hint);
  if (whole !== null) return { quantities: [whole, ...toleranceAfterCode(word, hint)], packages: [] };
  const pieces = word.split(between).filter((piece) => piece !== '');
  const read = pieces.length < 2 ? [] : pieces.map((piece) => wordRead(piece, hint));
  return { quantities: read.flatMap((piece) => piece.quantities), packages: read.flatMap((piece) => piece.packages) };
}

/** What parts two statements of one word. Between digits a comma is a decimal sign, a slash a fraction, a dash a range. */
const between = /(?<!\d)[/,-]|[/,-](?!\d)|[;@|_]|(?=±)/u;

function toleranceAfterCode(word: string, hint: ValueHint): readonly Quantity[] {
  const isCode = hint.kind === 'capacitance' && parseCapacitorCode(word) !== null;
  const si = isCode ? capacitorCodeTolerance(word) : null;
  return si === null ? [] : [{ kind: 'tolerance', si, text: formatQuantity('tolerance', si) }];
}
