import type { Span } from '#core/place.ts';
import type { Definition, Scope, Value } from '../lowering/program.ts';
import { canReach } from './canReach.ts';
import { type Linked, namedScope } from './link.ts';
import { classAround, lookUp } from './lookUp.ts';

/** What a value comes down to once names are followed. */
export interface Meaning {
  /** A number, a text, a list, a call, or a name that nothing in the build defines. */
  readonly value: Value;
  /** Where names inside `value` are looked up; its file holds the value's words. */
  readonly scope: Scope;
  /** The name that the code uses for it; null for a bare value. */
  readonly name: string | null;
  /** The class of what it was read from, where the code tells. */
  readonly type: string | null;
  /** False for a name that is declared without a value, such as a parameter that no call of the build gives. */
  readonly known: boolean;
}

/** Every value that an expression can stand for. Names that lead in circles, or very far, give none. */
export function meaningsOf(value: Value, scope: Scope, linked: Linked): Meaning[] {
  return follow(value, scope, null, { linked, left: 400, trail: new Set() });
}

const furthest = 24;
const mostElements = 64;

interface Search {
  readonly linked: Linked;
  /** Steps left before the search gives up. */
  left: number;
  /** Definitions on the way here. */
  readonly trail: Set<Definition>;
}

function follow(value: Value, scope: Scope, name: string | null, search: Search): Meaning[] {
  if (search.left-- <= 0 || search.trail.size > furthest) return [];
  switch (value.kind) {
    case 'number':
    case 'text':
    case 'list':
      return [{ value, scope, name, type: null, known: true }];
    case 'call':
      return [{ value, scope: value.call.scope, name, type: null, known: true }];
    case 'either':
      return value.options.flatMap((option) => follow(option, scope, name, search));
    case 'range':
      return numbersOf(value.from, value.to, value.span).map((number) => ({
        value: number,
        scope,
        name: null,
        type: null,
        known: true,
      }));
    case 'element':
      return follow(value.of, scope, name, search).flatMap((list) => elementsOf(list, value.index, search));
    case 'member':
      return follow(value.of, scope, name, search).flatMap((record) =>
        memberOf(record, value.name, `${record.name ?? ''}.${value.name}`, search),
      );
    case 'name':
      return followName(value, scope, name, search);
    case 'other':
      return [];
  }
}

type NameValue = Extract<Value, { kind: 'name' }>;

function followName(value: NameValue, scope: Scope, name: string | null, search: Search): Meaning[] {
  const [head = '', ...rest] = value.path;
  const shown = name ?? value.written;
  if ((head === 'this' || head === 'self') && rest[0] !== undefined) {
    const owner = classAround(scope, search.linked);
    const found = owner?.definitions.get(rest[0]);
    return found ? throughAll(found, rest.slice(1), shown, search) : [];
  }
  const found = lookUp(head, scope, search.linked);
  if (found.length > 0) {
    const modules = found.filter(({ how }) => how === 'module');
    const plain = found.filter(({ how }) => how !== 'module');
    return [
      ...throughAll(plain, rest, shown, search),
      ...modules.flatMap((module) => throughModule(module, { value, scope, name }, search)),
    ];
  }
  const inner = rest.length > 0 ? namedScope(head, scope, search.linked) : null;
  if (inner) return insideScope(inner, rest, shown, search);
  return [{ value, scope, name, type: null, known: true }];
}

function throughAll(found: readonly Definition[], rest: readonly string[], name: string, search: Search): Meaning[] {
  return found.flatMap((definition) => {
    if (search.trail.has(definition)) return [];
    search.trail.add(definition);
    const meanings = through(definition, rest, name, search);
    search.trail.delete(definition);
    return meanings;
  });
}

function through(definition: Definition, rest: readonly string[], name: string, search: Search): Meaning[] {
  const whole = typed(valuesOf(definition, name, search), definition.type);
  const met = rest.reduce<Meaning[]>(
    (records, step) => records.flatMap((record) => memberOf(record, step, name, search)),
    whole,
  );
  if (met.length > 0 || rest.length === 0 || definition.type === null) return met;
  // A field that every object of the class shares, or that its constructor fills.
  const type = namedScope(definition.type, definition.scope, search.linked);
  return type ? insideScope(type, rest, name, search) : [];
}

/** What a definition gives: its value; for a parameter what calls hand in. */
function valuesOf(definition: Definition, name: string, search: Search): Meaning[] {
  if (definition.how === 'parameter') {
    const handed = handedIn(definition, search);
    if (handed.length > 0) return handed;
  }
  // A loop variable is no name that a reader would look for; its list is.
  const shown = definition.how === 'loop' ? null : name;
  const given = definition.value ? follow(definition.value, definition.scope, shown, search) : [];
  if (given.length > 0) return given;
  const unknown: Value = { kind: 'name', path: [definition.name], written: definition.name, span: definition.span };
  return definition.value === null && definition.how !== 'field'
    ? [{ value: unknown, scope: definition.scope, name, type: null, known: false }]
    : [];
}

function handedIn(definition: Definition, search: Search): Meaning[] {
  const { routine, index } = definition.of ?? { routine: null, index: 0 };
  if (!routine || routine.name === '') return [];
  return search.linked.callsTo(routine.name).flatMap((call) => {
    if (!canReach(call, definition, routine.owner, search.linked)) return [];
    const named = call.args.find((arg) => arg.name === definition.name);
    const argument = named ?? call.args.filter((arg) => arg.name === null)[index];
    if (argument) return follow(argument.value, call.scope, null, search);
    return definition.value ? follow(definition.value, definition.scope, null, search) : [];
  });
}

/** A name that an import brought in: a name of another file of the build, or of a module outside it. */
function throughModule(
  module: Definition,
  used: { value: NameValue; scope: Scope; name: string | null },
  search: Search,
): Meaning[] {
  const { value, scope, name } = used;
  if (module.value?.kind !== 'name') return [];
  const path = [...module.value.path, ...value.path.slice(1)];
  // The longest part that is a file of the build is the module; what follows is a name in it.
  for (let length = path.length; length > 0; length--) {
    const written = path
      .slice(0, length)
      .join('.')
      .replace(/^(\.+)\./, '$1');
    const program = search.linked.module(module.scope.source.file, written);
    if (!program) continue;
    const [head, ...tail] = path.slice(length);
    const found = head === undefined ? undefined : program.file.definitions.get(head);
    return found ? throughAll(found, tail, name ?? value.written, search) : [];
  }
  return [{ value: { ...value, path, written: path.join('.') }, scope, name, type: null, known: true }];
}

function insideScope(scope: Scope, path: readonly string[], name: string, search: Search): Meaning[] {
  const [head, ...rest] = path;
  if (head === undefined) return [];
  const found = scope.definitions.get(head);
  if (found) return throughAll(found, rest, name, search);
  const inner = scope.inner.get(head);
  return inner ? insideScope(inner, rest, name, search) : [];
}

function elementsOf(list: Meaning, index: string | null, search: Search): Meaning[] {
  if (list.value.kind !== 'list') return index === null || list.value.kind === 'call' ? [list] : [];
  const { items } = list.value;
  const numbered = index === null ? -1 : Number(index);
  const wanted =
    index === null
      ? items.slice(0, mostElements)
      : Number.isInteger(numbered)
        ? items.slice(numbered, numbered + 1)
        : items.filter(({ name }) => name === index);
  const elements = wanted.flatMap((item) => {
    const position = item.name ?? items.indexOf(item);
    const name = list.name === null ? null : `${list.name}[${position}]`;
    // A constant in the list is known by its own name, which says more than its place.
    const own = follow(item.value, list.scope, item.value.kind === 'name' ? null : name, search);
    return own.map((meaning) => ({ ...meaning, name: meaning.name ?? name }));
  });
  return typed(elements, list.type);
}

/** Values with the class of what holds them, where they have none of their own. */
function typed(meanings: readonly Meaning[], type: string | null): Meaning[] {
  return meanings.map((meaning) => (meaning.type === null ? { ...meaning, type } : meaning));
}

/** A field of a record: by name where its list names it, else by its number in the class. */
function memberOf(record: Meaning, field: string, name: string, search: Search): Meaning[] {
  const { value, type } = record;
  if (value.kind !== 'list') return [];
  const named = value.items.find((item) => item.name === field);
  if (named) return follow(named.value, record.scope, name, search);
  // Lists of records: any of them may be meant.
  const nested = value.items.filter((item) => item.value.kind === 'list');
  if (nested.length === value.items.length && nested.length > 0) {
    return nested.flatMap((item) => memberOf({ ...record, value: item.value }, field, name, search));
  }
  const scope = type === null ? null : namedScope(type, record.scope, search.linked);
  const at = scope ? [...scope.definitions.keys()].indexOf(field) : -1;
  const item = at < 0 ? undefined : value.items[at];
  return item ? follow(item.value, record.scope, name, search) : [];
}

function numbersOf(from: number, to: number, span: Span): Value[] {
  const count = Math.min(Math.max(to - from + 1, 0), mostElements);
  return Array.from({ length: count }, (_, i) => ({ kind: 'number', text: String(from + i), span }));
}
