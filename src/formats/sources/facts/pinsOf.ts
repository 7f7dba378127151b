import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { Linked } from '../linking/link.ts';
import { type Meaning, meaningsOf } from '../linking/meaningsOf.ts';
import { numberIn } from '../lowering/conditions.ts';
import type { Scope, Value } from '../lowering/program.ts';
import pinNames from '../tables/pinNames.json';
import { argumentAt, rulesFor } from './callRules.ts';

/** A pin that an expression stands for. */
export interface WrittenPin {
  readonly pin: string;
  /** The constant or variable that it was read from; null for a bare literal. */
  readonly name: string | null;
  readonly source: SourceText;
  /** Where the value stands. */
  readonly span: Span;
}

/** A name that is taken as a pin although nothing tells which. */
export interface UnknownPin {
  readonly unknown: string;
  readonly source: SourceText;
  readonly span: Span;
}

/** The pins that an expression can stand for. `-1` and other ways to say 'none' give nothing. */
export function pinsOf(value: Value, scope: Scope, linked: Linked, depth = 0): (WrittenPin | UnknownPin)[] {
  if (depth > 6) return [];
  return meaningsOf(value, scope, linked).flatMap((meaning) => pinsIn(meaning, linked, depth));
}

function pinsIn(meaning: Meaning, linked: Linked, depth: number): (WrittenPin | UnknownPin)[] {
  const { value, scope, name } = meaning;
  const at = { source: scope.source, span: value.span };
  switch (value.kind) {
    case 'number':
      return isPinNumber(value.text) ? [{ pin: value.text, name, ...at }] : [];
    case 'text':
      return value.text === '' ? [] : [{ pin: value.text, name, ...at }];
    case 'list':
      return value.items
        .slice(0, 64)
        .flatMap((item, i) =>
          pinsOf(item.value, scope, linked, depth + 1).map((found) =>
            named(found, name === null ? null : `${name}[${item.name ?? i}]`),
          ),
        );
    case 'call': {
      const wrapping = rulesFor(value.call, linked).some(({ wraps }) => wraps);
      const argument = wrapping ? argumentAt(value.call, '0') : null;
      if (!argument) return [];
      return pinsOf(argument.value, value.call.scope, linked, depth + 1).map((found) => named(found, name));
    }
    case 'name': {
      if (!meaning.known || isNone(value.path.at(-1) ?? '')) return [];
      const pin = boardPin(value.path, linked.programAt(scope.source.file)?.language === 'python');
      return pin === null ? [{ unknown: value.written, ...at }] : [{ pin, name, ...at }];
    }
    default:
      return [];
  }
}

function named(found: WrittenPin | UnknownPin, name: string | null): WrittenPin | UnknownPin {
  return 'pin' in found && found.name === null ? { ...found, name } : found;
}

const shapes = new RegExp(`^(${pinNames.shapes.join('|')})$`);
const none = new Set(pinNames.none);

/** The label of a pin that the board's own core or module names; null for any other name. */
function boardPin(path: readonly string[], isPython: boolean): string | null {
  const last = path.at(-1) ?? '';
  if (!isPython) return shapes.test(last) ? last : null;
  const module = path.slice(0, -1).join('.');
  if (
    module === 'board' ||
    module === 'machine.Pin.board' ||
    module === 'microcontroller.pin' ||
    module === 'pyb.Pin.board'
  )
    return last;
  // `Pin.cpu.A5` is the chip's own name, PA5, unlike the board's label A5.
  if (module === 'machine.Pin.cpu' || module === 'pyb.Pin.cpu') return /^[A-K]\d+$/.test(last) ? `P${last}` : last;
  return null;
}

export function isPinNumber(text: string): boolean {
  const number = numberIn(text);
  return number !== null && number <= pinNames.highest && !isNone(text);
}

export function isPinShape(name: string): boolean {
  return shapes.test(name);
}

function isNone(text: string): boolean {
  return none.has(text);
}
