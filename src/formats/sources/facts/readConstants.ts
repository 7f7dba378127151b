import type { CodeConstant } from '#core/code.ts';
import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { Linked } from '../linking/link.ts';
import { meaningsOf } from '../linking/meaningsOf.ts';
import { numberIn } from '../lowering/conditions.ts';
import type { Call, Definition, Program, Scope, Value } from '../lowering/program.ts';
import { argumentAt, rulesFor } from './callRules.ts';
import type { PlaceMaker } from './readPins.ts';
import { wordsOf } from './words.ts';

/** A stretch of a file, such as the value of a pin, that is no constant of its own. */
export type Taken = (source: SourceText, span: Span) => boolean;

/** Counts, addresses, speeds and settings of a build, each once. `taken` tells values that pins and secrets are. */
export function readConstants(linked: Linked, placeAt: PlaceMaker, taken: Taken): CodeConstant[] {
  const found = new Map<string, CodeConstant>();
  const add = (name: string | null, kind: CodeConstant['kind'], value: Value, source: SourceText) => {
    if ((value.kind !== 'number' && value.kind !== 'text' && value.kind !== 'name') || taken(source, value.span))
      return;
    const key = `${source.file}:${value.span[0]}`;
    const written = value.kind === 'name' ? value.written : value.text;
    if (!found.has(key)) found.set(key, { name, value: written, kind, place: placeAt(source, value.span) });
  };
  for (const program of linked.programs) {
    for (const call of program.calls) addFromCall(call, linked, add);
  }
  for (const program of linked.programs) addNamed(program.file, program, linked, add);
  return [...found.values()].sort((a, b) => a.place.span[0] - b.place.span[0]);
}

type Add = (name: string | null, kind: CodeConstant['kind'], value: Value, source: SourceText) => void;

function addFromCall(call: Call, linked: Linked, add: Add): void {
  const addNumber = (value: Value | undefined, kind: CodeConstant['kind']) => {
    if (!value) return;
    for (const meaning of meaningsOf(value, call.scope, linked)) {
      if (meaning.value.kind !== 'number' || (kind === 'address' && !isBusAddress(meaning.value.text))) continue;
      add(meaning.name, kind, meaning.value, meaning.scope.source);
    }
  };
  for (const rule of rulesFor(call, linked)) {
    for (const key of [rule.count, rule.countName])
      if (key !== undefined) addNumber(argumentAt(call, key)?.value, 'count');
    for (const key of [rule.baud, rule.baudName])
      if (key !== undefined) addNumber(argumentAt(call, key)?.value, 'baud');
    if (rule.address !== undefined) addNumber(argumentAt(call, rule.address)?.value, 'address');
  }
  const address = addressArgument(call);
  if (address) add(null, 'address', address, call.scope.source);
}

/** A 7-bit bus address given outright: the one hexadecimal number among the arguments of `begin` or a constructor. */
function addressArgument(call: Call): Value | null {
  const named = call.args.find(
    ({ name, value }) => name !== null && /^addr(ess)?$/i.test(name) && value.kind === 'number',
  );
  if (named) return named.value;
  if (call.how !== 'make' && call.callee.at(-1) !== 'begin') return null;
  const hex = call.args.filter(({ value }) => value.kind === 'number' && /^0[xX]/.test(value.text));
  const only = hex.length === 1 ? hex[0]?.value : undefined;
  return only?.kind === 'number' && isBusAddress(only.text) ? only : null;
}

/** I²C-bus specification UM10204, table 4: 0x00 to 0x07 and 0x78 to 0x7F are reserved. */
function isBusAddress(text: string): boolean {
  const number = numberIn(text);
  return number !== null && number >= 0x08 && number <= 0x77;
}

function addNamed(scope: Scope, program: Program, linked: Linked, add: Add): void {
  for (const definition of [...scope.definitions.values()].flat()) addDefinition(definition, program, add);
  for (const inner of scope.inner.values()) addNamed(inner, program, linked, add);
}

function addDefinition(definition: Definition, program: Program, add: Add): void {
  const { name, value, how } = definition;
  if (!value || !['macro', 'variable', 'field'].includes(how)) return;
  const isTruth = value.kind === 'name' && /^(true|false)$/i.test(value.written);
  if (value.kind !== 'number' && value.kind !== 'text' && !isTruth) return;
  const kind = kindByName(definition, value) ?? (isSetting(definition, program) ? 'setting' : null);
  if (kind) add(name, kind, value, program.source);
}

const lights =
  /^(leds?|pixels?|numpixels|lights?|lamps?|strips?|neopixels?|rings?|buttons?|keys?|sensors?|servos?|motors?|relays?|channels?|rows?|cols?|columns?)$/;
const counts = /^(num|number|count|n|total|anzahl)$/;

function kindByName({ name, constant }: Definition, value: Value): CodeConstant['kind'] | null {
  if (value.kind !== 'number') return null;
  const words = wordsOf(name);
  if (words.some((word) => word === 'baud' || word === 'baudrate')) return 'baud';
  const saysAddress = words.some((word) => /^(addr|address|i2caddr)$/.test(word));
  // `int address = 16;` counts through a memory; a bus address is constant or in hexadecimal.
  if (saysAddress && isBusAddress(value.text) && (constant || /^0x/i.test(value.text))) return 'address';
  if (words.length === 1 && /^(numpixels|numleds|ledcount|pixelcount|nleds|npixels)$/.test(words[0] ?? ''))
    return 'count';
  return words.some((word) => counts.test(word)) && words.some((word) => lights.test(word)) ? 'count' : null;
}

/** What a builder is meant to change: a named constant of the file itself, ahead of its first function. */
function isSetting({ constant, scope, span }: Definition, program: Program): boolean {
  return constant && scope === program.file && span[0] < program.firstRoutine;
}
