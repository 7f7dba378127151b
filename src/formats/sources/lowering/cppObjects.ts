import type { Span } from '#core/place.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import { isPlainType } from './cppNames.ts';
import { calleePath, cppValue, templateOf } from './cppValue.ts';
import type { Draft } from './draft.ts';
import { operands } from './operands.ts';
import type { Call, Item, Scope, Value } from './program.ts';

/** A declaration under way: what all its names share. */
export interface Subject {
  readonly typeNode: SyntaxNode;
  readonly type: string | null;
  readonly scope: Scope;
  readonly draft: Draft;
  readonly constant: boolean;
}

/** `Button b{4}`, and arrays of objects such as `Button all[] = {{4}, {5}}` or `Servo s[] = {Servo(3)}`. */
export function makeFromList(
  value: Value,
  at: SyntaxNode,
  name: string,
  declarator: SyntaxNode,
  subject: Subject,
): void {
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

/** Enters the making of an object at its declarator. */
export function makeObject(
  at: SyntaxNode,
  into: string,
  args: readonly Item[],
  { typeNode, scope, draft }: Subject,
): Call {
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
export function objectArguments(declarator: SyntaxNode, { typeNode, scope, draft }: Subject): Item[] | null {
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
