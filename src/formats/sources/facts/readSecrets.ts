import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { assignmentsIn } from '../credentials/assignmentsIn.ts';
import { isCredential, type SecretKind, secretKindOf } from '../credentials/judgeCredential.ts';
import { type FoundSecret, shapesIn } from '../credentials/shapesIn.ts';
import { type Linked, namedScope } from '../linking/link.ts';
import { type Meaning, meaningsOf } from '../linking/meaningsOf.ts';
import {
  type Call,
  type Definition,
  type Item,
  type Program,
  type Scope,
  scopesIn,
  type Value,
} from '../lowering/program.ts';
import secretNames from '../tables/secretNames.json';
import { argumentAt, receiverNames } from './callRules.ts';

/** A credential and the file that it stands in. */
export interface PlacedSecret extends FoundSecret {
  readonly source: SourceText;
}

/**
 * Credentials in the sources of a build: given to calls that take them, given to names that promise them, known
 * by their shape; in comments and switched-off code too, since a published copy holds those as well.
 */
export function readSecrets(linked: Linked): PlacedSecret[] {
  const found: PlacedSecret[] = [];
  for (const program of linked.programs) {
    for (const call of program.calls) found.push(...fromCall(call, linked));
  }
  for (const program of linked.programs) {
    for (const scope of scopesIn(program.file)) {
      for (const definition of [...scope.definitions.values()].flat())
        found.push(...fromDefinition(definition, linked));
    }
    for (const call of program.calls) found.push(...call.args.flatMap((item) => fromItem(item, call.scope, linked)));
    found.push(...fromText(program));
  }
  return found;
}

interface SecretCall {
  readonly call: string;
  readonly of?: readonly string[];
  readonly into?: string;
  readonly secrets: Readonly<Record<string, string>>;
}

const secretCalls: readonly SecretCall[] = secretNames.calls.rules.map(({ secrets, ...rule }) => ({
  ...rule,
  // JSON rows differ in their keys; absent ones are dropped.
  secrets: Object.fromEntries(
    Object.entries(secrets).flatMap(([key, kind]) => (kind === undefined ? [] : [[key, kind]])),
  ),
}));

function fromCall(call: Call, linked: Linked): PlacedSecret[] {
  const name = call.callee.at(-1);
  return secretCalls.flatMap((rule) => {
    if (rule.call !== name) return [];
    const { of } = rule;
    if (of && !receiversOf(call, linked).some((receiver) => of.includes(receiver))) return [];
    const target = rule.into === undefined ? null : argumentAt(call, rule.into)?.value;
    const promised =
      target === null
        ? null
        : target?.kind === 'name' || target?.kind === 'text'
          ? secretKindOf(lastWord(target))
          : null;
    if (rule.into !== undefined && promised === null) return [];
    return Object.entries(rule.secrets).flatMap(([key, kind]) => {
      const value = argumentAt(call, key)?.value;
      return value
        ? textsOf(value, call.scope, linked).flatMap((text) =>
            credential(text, promised ?? (kind as SecretKind), text.name),
          )
        : [];
    });
  });
}

function receiversOf(call: Call, linked: Linked): string[] {
  return [...receiverNames(call, linked), call.callee.slice(0, -1).join('.'), call.callee.at(-2) ?? ''];
}

function lastWord(value: Value): string {
  return value.kind === 'name' ? (value.path.at(-1) ?? '') : value.kind === 'text' ? value.text : '';
}

function fromDefinition(definition: Definition, linked: Linked): PlacedSecret[] {
  const { name, value, scope, type, how } = definition;
  if (how === 'module') return [];
  const kind = secretKindOf(name);
  const inside = value ? fromItems(value, type, scope, linked) : [];
  if (kind === null) return inside;
  const itself: Value = { kind: 'name', path: [name], written: name, span: definition.span };
  const texts = how === 'parameter' ? textsOf(itself, scope, linked) : value ? textsOf(value, scope, linked) : [];
  const bytes = value ? keyBytes(value, kind, name, scope) : [];
  return [...texts.flatMap((text) => credential(text, kind, name)), ...bytes, ...inside];
}

/** Named entries of records and dictionaries; unnamed ones go by the fields of their class. */
function fromItems(value: Value, type: string | null, scope: Scope, linked: Linked, depth = 0): PlacedSecret[] {
  if (value.kind !== 'list' || depth > 6) return [];
  const record = type === null ? null : namedScope(type, scope, linked);
  const fields = record ? [...record.definitions.keys()] : [];
  return value.items.flatMap((item, i) => [
    ...fromItem({ name: item.name ?? fields[i] ?? null, value: item.value }, scope, linked),
    ...fromItems(item.value, type, scope, linked, depth + 1),
  ]);
}

function fromItem({ name, value }: Item, scope: Scope, linked: Linked): PlacedSecret[] {
  const kind = name === null ? null : secretKindOf(name);
  const inner =
    name !== null || value.kind !== 'list'
      ? []
      : value.items.flatMap((item) => (item.name === null ? [] : fromItem(item, scope, linked)));
  if (kind === null) return inner;
  return textsOf(value, scope, linked).flatMap((text) => credential(text, kind, name));
}

/** Session keys of radio networks are often written as sixteen or more bytes. */
function keyBytes(value: Value, kind: SecretKind, name: string, scope: Scope): PlacedSecret[] {
  if (value.kind !== 'list' || kind !== 'key' || value.items.length < 16) return [];
  const bytes = value.items.map(({ value: item }) => (item.kind === 'number' ? Number(item.text) : Number.NaN));
  if (bytes.some((byte) => !(byte >= 0 && byte <= 255)) || new Set(bytes).size < 4) return [];
  const span: Span = [value.items[0]?.value.span[0] ?? 0, value.items.at(-1)?.value.span[1] ?? 0];
  return [{ kind, name, span, source: scope.source }];
}

function textsOf(value: Value, scope: Scope, linked: Linked, depth = 0): Meaning[] {
  if (depth > 3) return [];
  return meaningsOf(value, scope, linked).flatMap((meaning) => {
    if (meaning.value.kind === 'text') return [meaning];
    // Several networks in a list.
    return meaning.value.kind === 'list'
      ? meaning.value.items.flatMap((item) =>
          item.name === null ? textsOf(item.value, meaning.scope, linked, depth + 1) : [],
        )
      : [];
  });
}

function credential({ value, scope }: Meaning, kind: SecretKind, name: string | null): PlacedSecret[] {
  if (value.kind !== 'text' || !isCredential(value.text, kind)) return [];
  return [{ kind, name, span: value.span, source: scope.source }];
}

function fromText({ source, unread }: Program): PlacedSecret[] {
  const loose = unread.flatMap(({ span: [start, end] }) => assignmentsIn(source.text.slice(start, end), start, false));
  return [...loose, ...shapesIn(source.text)].map((secret) => ({ ...secret, source }));
}
