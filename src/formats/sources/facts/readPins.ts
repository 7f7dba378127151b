import type { CodePin, PinUse } from '#core/code.ts';
import type { Span, TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { Linked } from '../linking/link.ts';
import { meaningsOf } from '../linking/meaningsOf.ts';
import type { Call, Definition, Scope, Value } from '../lowering/program.ts';
import pinNames from '../tables/pinNames.json';
import { argumentAt, type CallRule, rulesFor, useOf } from './callRules.ts';
import { isPinNumber, isPinShape, pinsOf, type UnknownPin, type WrittenPin } from './pinsOf.ts';
import { wordsOf } from './words.ts';

/** Makes places whose quotes show no secret. */
export type PlaceMaker = (source: SourceText, span: Span) => TextPlace;

/** Pins that the calls of a build take, and constants that call themselves pins. */
export function readPins(linked: Linked, placeAt: PlaceMaker): { pins: CodePin[]; problems: Problem[] } {
  const register = openRegister(placeAt);
  for (const program of linked.programs) {
    for (const call of program.calls) {
      for (const rule of rulesFor(call, linked)) register.take(call, rule, linked);
    }
  }
  for (const { file } of linked.programs) addNamed(file, linked, register);
  return register.finish();
}

interface Draft {
  readonly written: WrittenPin;
  name: string | null;
  readonly uses: Set<PinUse>;
  readonly usedAt: TextPlace[];
  group: string | null;
}

function openRegister(placeAt: PlaceMaker) {
  const drafts = new Map<string, Draft>();
  const places = new Set<string>();
  const unknown = new Map<string, UnknownPin>();

  function draftOf(written: WrittenPin): Draft {
    const file = written.source.file;
    places.add(`${file}:${written.span[0]}`);
    // The same bare number twice in a file is one pin; a constant is known by the place of its value.
    const key = written.name === null ? `${file}:${written.pin}` : `${file}:${written.span[0]}:${written.pin}`;
    const known = drafts.get(key);
    if (known) return known;
    const draft = { written, name: written.name, uses: new Set<PinUse>(), usedAt: [], group: null };
    drafts.set(key, draft);
    return draft;
  }

  return {
    take(call: Call, rule: CallRule, linked: Linked): void {
      for (const [key, use] of Object.entries(rule.pins)) {
        const value = key === 'self' ? receiverOf(call) : (argumentAt(call, key)?.value ?? null);
        if (!value || isInterruptNumber(value, rule)) continue;
        for (const found of pinsOf(value, call.scope, linked)) {
          if ('unknown' in found) {
            unknown.set(`${found.source.file}:${found.unknown}`, found);
            continue;
          }
          const draft = draftOf(
            found.name === null && rule.wraps && call.into !== null ? { ...found, name: call.into } : found,
          );
          draft.uses.add(useOf(rule, use, call, linked));
          if (key !== 'self') draft.group ??= groupOf(call, rule);
          draft.usedAt.push(usePlace(call, value, placeAt));
        }
      }
    },
    name(written: WrittenPin): void {
      if (!places.has(`${written.source.file}:${written.span[0]}`)) draftOf(written).uses.add('named');
    },
    finish() {
      const pins = [...drafts.values()].map((draft) => codePin(draft, placeAt)).sort(byPlace);
      return { pins, problems: [...unknown.values()].map((found) => unknownProblem(found, placeAt)) };
    },
  };
}

function codePin({ written, name, uses, usedAt, group }: Draft, placeAt: PlaceMaker): CodePin {
  const told = [...uses].filter((use) => use !== 'other' || uses.size === 1);
  return {
    name,
    pin: written.pin,
    uses: told,
    place: placeAt(written.source, written.span),
    usedAt: inOrder(usedAt),
    group,
  };
}

function inOrder(places: readonly TextPlace[]): TextPlace[] {
  const distinct = new Map(places.map((place) => [`${place.file}:${place.span[0]}`, place]));
  return [...distinct.values()].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.span[0] - b.span[0]));
}

function byPlace(a: CodePin, b: CodePin): number {
  return a.place.span[0] - b.place.span[0];
}

/** What a method is called on, as a name. */
function receiverOf(call: Call): Value {
  const path = call.callee.slice(0, -1);
  return { kind: 'name', path, written: path.join('.'), span: call.span };
}

/** `attachInterrupt(0, …)` numbers the interrupt on several boards, not the pin. */
function isInterruptNumber(value: Value, rule: CallRule): boolean {
  return rule.numbered !== undefined && value.kind === 'number' && Number(value.text) <= rule.numbered;
}

function groupOf(call: Call, rule: CallRule): string | null {
  if (rule.group !== undefined) {
    const value = argumentAt(call, rule.group)?.value;
    return value?.kind === 'name' ? value.written : null;
  }
  if (rule.of) return call.callee.at(-2) ?? null;
  // What a function gives back is a reading, what a class gives is the object that the pin belongs to.
  const isClass = rule.make !== undefined || /^[A-Z]/.test(call.callee.at(-1) ?? '');
  return rule.wraps || !isClass ? null : call.into;
}

/** The whole call where it fits a line; of a longer one the argument. */
function usePlace(call: Call, value: Value, placeAt: PlaceMaker): TextPlace {
  const whole = placeAt(call.scope.source, call.span);
  return whole.quote.length <= 100 && !/[\r\n]/.test(whole.quote) ? whole : placeAt(call.scope.source, value.span);
}

function unknownProblem({ unknown, source, span }: UnknownPin, placeAt: PlaceMaker): Problem {
  return {
    place: placeAt(source, span),
    message: `A call takes ${unknown} as a pin; no source file of the build says which pin that is.`,
    remedy: `Add the file that gives ${unknown} a value, or write the pin itself.`,
  };
}

/** Constants that no call takes, but whose name says that they are pins. */
function addNamed(scope: Scope, linked: Linked, register: { name(written: WrittenPin): void }): void {
  for (const definitions of scope.definitions.values()) {
    for (const definition of definitions) {
      if (saysPin(definition)) for (const written of literalPins(definition, linked)) register.name(written);
    }
  }
  for (const inner of scope.inner.values()) addNamed(inner, linked, register);
}

const pinWords = new Set(pinNames.words);
const otherWords = new Set(pinNames.notPins);

function saysPin({ name, how, value }: Definition): boolean {
  if (value === null || how === 'parameter' || how === 'loop' || how === 'module') return false;
  const words = wordsOf(name).map((word) => word.replace(/\d+$/, ''));
  return words.some((word) => pinWords.has(word)) && !words.some((word) => otherWords.has(word));
}

function literalPins(definition: Definition, linked: Linked): WrittenPin[] {
  const { name, value, scope } = definition;
  if (value === null) return [];
  const values = value.kind === 'list' ? value.items.map(({ value: item }) => item) : [value];
  return values.flatMap((each, i) => {
    const shown = value.kind === 'list' ? `${name}[${i}]` : name;
    return meaningsOf(each, scope, linked).flatMap((meaning) => {
      const found = meaning.value;
      const isPin =
        found.kind === 'number'
          ? isPinNumber(found.text)
          : found.kind === 'name' && isPinShape(found.path.at(-1) ?? '');
      const pin = found.kind === 'number' ? found.text : found.kind === 'name' ? (found.path.at(-1) ?? '') : '';
      return isPin ? [{ pin, name: shown, source: meaning.scope.source, span: found.span }] : [];
    });
  });
}
