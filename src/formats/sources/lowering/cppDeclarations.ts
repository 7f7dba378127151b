import type { SyntaxNode } from '#core/syntax.ts';
import { declaratorTypes, isPlainType, nameIn, typeName } from './cppNames.ts';
import { makeFromList, makeObject, objectArguments, type Subject } from './cppObjects.ts';
import { cppCall, cppValue, itemsOf } from './cppValue.ts';
import type { Draft } from './draft.ts';
import { operands } from './operands.ts';
import { define, definitionAt, type Scope, type Value } from './program.ts';

/** Enters the names that a declaration introduces, and the objects that it makes. */
export function declare(node: SyntaxNode, scope: Scope, draft: Draft): void {
  const typeNode = node.field('type');
  if (!typeNode || node.type === 'type_definition') return;
  const subject: Subject = {
    typeNode,
    type: typeName(typeNode, draft.source.text),
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
  const how = scope.kind === 'class' ? 'field' : 'variable';
  const { constant } = subject;
  define(definitionAt(name, { how, value, type: classOfValue ?? type, scope, constant }), scope);
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

function isConstant(node: SyntaxNode): boolean {
  return node.children.some(
    ({ type, text }) => type === 'type_qualifier' && (text === 'const' || text === 'constexpr'),
  );
}
