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
 * a hint, the first that is no tolerance. All other quantities are ratings. Words that mean nothing here are passed over.
 */
export function parseValueCell(text: string, hint: ValueHint = {}): ValueCell {
  const whole = parseValue(text, hint);
  if (whole !== null && (hint.kind === undefined || whole.kind === hint.kind) && !isPackage(text.trim())) {
    return sorted([whole, ...toleranceAfterCode(text.trim(), hint)], hint, null);
  }
  const { quantities, packages } = read(text.slice(0, longest), hint);
  const alone = quantities.length === 0 && packages[0] !== undefined && looksLikeNumber(packages[0]);
  return sorted(quantities, hint, alone ? null : (packages[0] ?? null));
}

function sorted(quantities: readonly Quantity[], hint: ValueHint, body: string | null): ValueCell {
  const value =
    quantities.find((quantity) => quantity.kind === hint.kind) ??
    quantities.find((quantity) => naming.includes(quantity.kind)) ??
    (hint.kind === undefined ? quantities.find((quantity) => quantity.kind !== 'tolerance') : undefined) ??
    null;
  return { value, ratings: quantities.filter((quantity) => quantity !== value), package: body };
}

function read(text: string, hint: ValueHint): { quantities: Quantity[]; packages: string[] } {
  const words = text.split(/[\s()[\]]+|[,;](?:\s|$)/u).filter((word) => word !== '');
  const quantities: Quantity[] = [];
  const packages: string[] = [];
  for (let i = 0; i < words.length; ) {
    const taken = longestQuantity(words, i, hint);
    if (taken !== null) quantities.push(...taken.quantities);
    else packages.push(...packagesIn(words[i] ?? ''));
    i += taken?.words ?? 1;
  }
  return { quantities, packages };
}

/** A quantity of up to three words, of which only the first holds digits; else the quantities within one word. */
function longestQuantity(
  words: readonly string[],
  at: number,
  hint: ValueHint,
): { words: number; quantities: readonly Quantity[] } | null {
  const first = words[at] ?? '';
  for (const count of [3, 2]) {
    const more = words.slice(at + 1, at + count);
    if (more.length !== count - 1 || more.some((word) => /\d/u.test(word))) continue;
    const joined = parseValue([first, ...more].join(' '), hint);
    if (joined !== null) return { words: count, quantities: [joined] };
  }
  const within = quantitiesIn(first, hint);
  return within.length === 0 ? null : { words: 1, quantities: within };
}

function quantitiesIn(word: string, hint: ValueHint): readonly Quantity[] {
  if (isPackage(word)) return [];
  const whole = parseValue(word, hint);
  if (whole !== null) return [whole, ...toleranceAfterCode(word, hint)];
  const pieces = word.split(/[/;,@|_-]+|(?=±)/u).filter((piece) => piece !== '');
  return pieces.length < 2 ? [] : pieces.flatMap((piece) => quantitiesIn(piece, hint));
}

function packagesIn(word: string): readonly string[] {
  if (isPackage(word)) return [word];
  return word.split(/[/;,_]+/u).filter((piece) => isPackage(piece));
}

function toleranceAfterCode(word: string, hint: ValueHint): readonly Quantity[] {
  const isCode = hint.kind === 'capacitance' && parseCapacitorCode(word) !== null;
  const si = isCode ? capacitorCodeTolerance(word) : null;
  return si === null ? [] : [{ kind: 'tolerance', si, text: formatQuantity('tolerance', si) }];
}
