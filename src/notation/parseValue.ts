import type { Quantity, QuantityKind } from '#core/quantity.ts';
import { parseCapacitorCode } from './capacitorCode.ts';
import { isFraction, parseDecimal, parseNumber } from './decimal.ts';
import { plainForm } from './plainForm.ts';
import { parseShorthand } from './rkm.ts';
import { siOf, unitOf } from './units.ts';

/** What a value's surroundings tell, such as the class of the part that has it. */
export interface ValueHint {
  readonly kind?: QuantityKind | undefined;
}

/** Longer texts are no single value. */
const longest = 64;

/**
 * One value as people write it: `4k7`, `4,7 k`, `R47`, `100n`, `4.7 kΩ`, `330 ohm`, `1/4 W`, `±5%`, `3V3`. With a
 * kind, a bare number counts in that kind's unit, except for capacitance (where three digits are a code: `104` is
 * 100 nF), inductance and tolerance. A stated unit outweighs the hint. Null where the text is no value or has two
 * readings, such as `1,000` or `100N` without a kind.
 */
export function parseValue(text: string, hint: ValueHint = {}): Quantity | null {
  if (text.length > longest) return null;
  const plain = plainForm(text);
  const sign = /^[+±-]/u.exec(plain)?.[0] ?? '';
  const read = readSigned(plain.slice(sign.length).trimStart(), sign === '-', hint.kind);
  if (read === null || !signFits(sign, read.kind)) return null;
  // Adding zero turns a negative zero into a plain one.
  return { kind: read.kind, si: read.si + 0, text: text.trim() };
}

type Reading = Pick<Quantity, 'kind' | 'si'>;

function readSigned(text: string, minus: boolean, kind: QuantityKind | undefined): Reading | null {
  const code = kind === 'capacitance' ? parseCapacitorCode(text) : null;
  // `100F` is a hundred farads, or ten picofarads within 1 %.
  if (code !== null && text.endsWith('F')) return null;
  const read = parseShorthand(text, kind) ?? code ?? readBare(text, kind);
  if (read === null) return readWithUnit(text, minus, kind);
  return { kind: read.kind, si: minus ? -read.si : read.si };
}

function readBare(text: string, kind: QuantityKind | undefined): Reading | null {
  if (kind === undefined || kind === 'capacitance' || kind === 'inductance' || kind === 'tolerance') return null;
  const si = parseNumber(text);
  return si === null ? null : { kind, si };
}

function readWithUnit(text: string, minus: boolean, kind: QuantityKind | undefined): Reading | null {
  const [, number = '', spelling = ''] = /^(.*\d) ?([^\d]*)$/su.exec(text) ?? [];
  const unit = unitOf(/^-[a-z]{3,}$/u.test(spelling) ? spelling.slice(1) : spelling);
  const decimal = parseDecimal(number);
  if (unit === null || decimal === null) return null;
  if (isFraction(number) && !fractional.includes(unit.kind)) return null;
  if (kind !== undefined && kind !== unit.kind && twofold.has(spelling)) return null;
  // The sign goes in before the unit does: −40 °F is −40 °C.
  const si = siOf({ ...decimal, digits: minus ? `-${decimal.digits}` : decimal.digits }, unit);
  return si === null ? null : { kind: unit.kind, si };
}

/** What is written as a fraction; `10/16V` is ten microfarads at 16 V. */
const fractional: readonly QuantityKind[] = ['power', 'length', 'time', 'mass'];
/** Units that something else shares: milli and minute, Fahrenheit. A hint to another kind leaves them open. */
const twofold: ReadonlySet<string> = new Set(['m', 'F']);

function signFits(sign: string, kind: QuantityKind): boolean {
  if (sign === '') return true;
  if (sign === '±') return kind === 'tolerance';
  return kind === 'voltage' || kind === 'current' || kind === 'temperature';
}
