import type { Span } from '#core/place.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import { numberIn } from './conditions.ts';
import { calleePath, cppCall, cppValue, itemsOf, operands, templateOf } from './cppValue.ts';
import type { Draft } from './draft.ts';
import { type Call, define, type Item, openScope, type Routine, type Scope, type Value } from './program.ts';

/** Enters the names that a declaration introduces, and the objects that it makes. */
export function declare(node: SyntaxNode, scope: Scope, draft: Draft): void {
  const typeNode = node.field('type');
  if (!typeNode || node.type === 'type_definition') return;
  const subject: Subject = {
    node,
    typeNode,
    type: typeName(typeNode, draft),
    scope,
    draft,
    constant: isConstant(node),
  };
  const isDeclarator = ({ type }: SyntaxNode) =>
    declaratorTypes.has(type) && !(type === 'identifier' && node.type === 'field_declaration');
  const parts = operands(node).filter((child) => child !== typeNode && !beforeNames.has(child.type));
  parts.forEach((part, i) => {
    const next = parts[i + 1];
    // The value of a field is a sibling of its declarator.
    if (isDeclarator(part)) declareOne(part, next && !isDeclarator(next) ? next : null, subject);
  });
}

const beforeNames = new Set([
  'type_qualifier',
  'storage_class_specifier',
  'attribute_specifier',
  'ms_declspec_modifier',
  'virtual',
]);

/** The name of a class; `struct { … } pins;` goes by the name behind its body. */
function typeName(typeNode: SyntaxNode, draft: Draft): string | null {
  if (!typeNode.type.endsWith('_specifier') || typeNode.type === 'sized_type_specifier')
    return calleePath(typeNode).at(-1) ?? null;
  return typeNode.field('name')?.text ?? nameBehind(typeNode, draft.source.text);
}

/** The name that follows the body of a class which has none of its own, as in `typedef struct { … } Pins;`. */
export function nameBehind(node: SyntaxNode, text: string): string | null {
  return /^\s*(\w+)/.exec(text.slice(node.end, node.end + 80))?.[1] ?? null;
}

interface Subject {
  readonly node: SyntaxNode;
  readonly typeNode: SyntaxNode;
  readonly type: string | null;
  readonly scope: Scope;
  readonly draft: Draft;
  readonly constant: boolean;
}

const declaratorTypes = new Set([
  'identifier',
  'field_identifier',
  'init_declarator',
  'array_declarator',
  'pointer_declarator',
  'reference_declarator',
  'function_declarator',
]);

function declareOne(declarator: SyntaxNode, fieldValue: SyntaxNode | null, subject: Subject): void {
  const { scope, draft, type, typeNode } = subject;
  const inner = declarator.type === 'init_declarator' ? declarator.field('declarator') : declarator;
  const name = inner ? nameIn(inner) : null;
  if (!inner || !name) return;
  if (inner.type === 'function_declarator' || inner.type === 'pointer_declarator') {
    const args = objectArguments(inner, subject);
    if (args) makeObject(declarator, name.text, args, subject);
    else if (inner.type === 'function_declarator') return;
  }
  const given = declarator.field('value') ?? fieldValue;
  const value = given ? valueGiven(given, name.text, declarator, subject) : null;
  const classOfValue =
    typeNode.type === 'placeholder_type_specifier' && value?.kind === 'call' ? value.call.callee.at(-1) : undefined;
  define(
    {
      name: name.text,
      how: scope.kind === 'class' ? 'field' : 'variable',
      value,
      type: classOfValue ?? type,
      scope,
      constant: subject.constant,
      span: [name.start, name.end],
    },
    scope,
  );
  if (value && !draft.calls.has(declarator)) makeFromList(value, declarator, name.text, inner, subject);
}

/** `int x = 5`, `int x{5}`, `int x(5)`, `Strip s(8, PIN)`, `Strip s = Strip(8, PIN)`. */
function valueGiven(given: SyntaxNode, name: string, declarator: SyntaxNode, subject: Subject): Value {
  const { scope, draft, typeNode } = subject;
  const isPlain = isPlainType(typeNode);
  if (given.type === 'call_expression' || given.type === 'new_expression') cppCall(given, scope, draft, name);
  if (
    given.type === 'argument_list' ||
    (given.type === 'initializer_list' && declarator.field('declarator')?.type !== 'array_declarator')
  ) {
    const items = itemsOf(given, scope, draft);
    const only = items[0];
    if (isPlain && items.length === 1 && only) return only.value;
    if (given.type === 'argument_list') {
      const call = makeObject(declarator, name, items, subject);
      return { kind: 'call', call, span: [given.start, given.end] };
    }
  }
  return cppValue(given, scope, draft);
}

/** `Button b{4}`, and arrays of objects such as `Button all[] = {{4}, {5}}` or `Servo s[] = {Servo(3)}`. */
function makeFromList(value: Value, at: SyntaxNode, name: string, declarator: SyntaxNode, subject: Subject): void {
  if (value.kind !== 'list' || isPlainType(subject.typeNode)) return;
  if (declarator.type !== 'array_declarator') {
    makeObject(at, name, value.items, subject);
    return;
  }
  const nodes = operands(at.field('value') ?? at);
  value.items.forEach((item, i) => {
    const node = nodes[i];
    if (!node || item.value.kind === 'call') return;
    makeObject(node, name, item.value.kind === 'list' ? item.value.items : [item], subject);
  });
}

function makeObject(at: SyntaxNode, into: string, args: readonly Item[], { typeNode, scope, draft }: Subject): Call {
  const call: Call = {
    how: 'make',
    callee: calleePath(typeNode),
    template: templateOf(typeNode, scope, draft),
    args,
    into,
    scope,
    span: spanWithType(at, typeNode, scope),
  };
  draft.calls.set(at, call);
  return call;
}

/** From the name of the class on, where it stands right before. */
function spanWithType(at: SyntaxNode, typeNode: SyntaxNode, scope: Scope): Span {
  const between = scope.source.text.slice(typeNode.end, at.start);
  return [typeNode.end <= at.start && between.trim() === '' ? typeNode.start : at.start, at.end];
}

/**
 * `Strip s(COUNT, PIN);` looks like the declaration of a function to a grammar that knows no types. It makes an
 * object when everything in the brackets could be a value. Null where it does declare a function.
 */
function objectArguments(declarator: SyntaxNode, { typeNode, scope, draft }: Subject): Item[] | null {
  const routine = declarator.type === 'pointer_declarator' ? declarator.field('declarator') : declarator;
  const list = routine?.type === 'function_declarator' ? routine.field('parameters') : null;
  const parameters = list ? operands(list) : [];
  if (!list || parameters.length === 0 || isPlainType(typeNode)) return null;
  const items: Item[] = [];
  for (const parameter of parameters) {
    const type = parameter.field('type');
    const shape = parameter.field('declarator');
    if (parameter.type !== 'parameter_declaration' || !type || isPlainType(type)) return null;
    if (parameter.children.some((child) => child !== type && child !== shape && child.type !== 'comment')) return null;
    if (shape && shape.type !== 'abstract_array_declarator') return null;
    const of = cppValue(type, scope, draft);
    if (of.kind !== 'name') return null;
    const index = shape?.field('size')?.text ?? null;
    items.push({
      name: null,
      value: shape ? { kind: 'element', of, index, span: [parameter.start, parameter.end] } : of,
    });
  }
  return items;
}

/** Enumerators by name, with the numbers that C++ counts on from the last one stated. */
export function defineEnumerators(node: SyntaxNode, scope: Scope, draft: Draft): void {
  const list = node.field('body');
  if (!list) return;
  const type = node.field('name')?.text ?? null;
  const named = type === null ? null : openScope('namespace', type, scope);
  let next: number | null = 0;
  for (const enumerator of operands(list).filter((child) => child.type === 'enumerator')) {
    const name = enumerator.field('name');
    const given = enumerator.field('value');
    if (!name) continue;
    const stated: Value | null = given ? cppValue(given, scope, draft) : null;
    if (stated) next = stated.kind === 'number' ? numberIn(stated.text) : null;
    const counted: Value | null =
      next === null ? null : { kind: 'number', text: String(next), span: [name.start, name.end] };
    const definition = {
      name: name.text,
      how: 'enumerator' as const,
      value: stated ?? counted,
      type,
      scope,
      constant: true,
      span: [name.start, name.end] as const,
    };
    define(definition, scope);
    if (named) define(definition, named);
    if (next !== null) next += 1;
  }
}

export function defineParameters(list: SyntaxNode | null, scope: Scope, draft: Draft, routine: Routine): void {
  const parameters = list?.type === 'abstract_function_declarator' ? list.field('parameters') : list;
  if (!parameters) return;
  operands(parameters).forEach((parameter, index) => {
    const declarator = parameter.field('declarator');
    const name = declarator ? nameIn(declarator) : null;
    if (!name) return;
    const given = parameter.field('default_value');
    const typeNode = parameter.field('type');
    define(
      {
        name: name.text,
        how: 'parameter',
        value: given ? cppValue(given, scope, draft) : null,
        type: typeNode ? (calleePath(typeNode).at(-1) ?? null) : null,
        scope,
        constant: false,
        span: [name.start, name.end],
        of: { routine, index },
      },
      scope,
    );
  });
}

function nameIn(declarator: SyntaxNode): SyntaxNode | null {
  let node: SyntaxNode | null = declarator;
  for (let hops = 0; node && hops < 20; hops++) {
    if (node.type === 'identifier' || node.type === 'field_identifier') return node;
    node = node.field('declarator') ?? node.children.find(({ type }) => declaratorTypes.has(type)) ?? null;
  }
  return null;
}

function isConstant(node: SyntaxNode): boolean {
  return node.children.some(
    ({ type, text }) => type === 'type_qualifier' && (text === 'const' || text === 'constexpr'),
  );
}

/** Numbers and texts, as against classes. */
function isPlainType(node: SyntaxNode): boolean {
  if (node.type === 'primitive_type' || node.type === 'sized_type_specifier') return true;
  return /^(u?int(_fast|_least)?\d+_t|byte|word|boolean|String|gpio_num_t|pin_size_t|PinName|auto|static|uint|PROGMEM)$/.test(
    node.text,
  );
}
