import type { SyntaxNode } from '#core/syntax.ts';
import { numberIn } from './conditions.ts';
import { nameIn } from './cppNames.ts';
import { calleePath, cppValue } from './cppValue.ts';
import type { Draft } from './draft.ts';
import { operands } from './operands.ts';
import { define, definitionAt, openScope, type Routine, type Scope, type Value } from './program.ts';

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
    const value = stated ?? counted;
    const definition = definitionAt(name, { how: 'enumerator', value, type, scope, constant: true });
    define(definition, scope);
    if (named) define(definition, named);
    if (next !== null) next += 1;
  }
}

/** Names of parameters, each with the routine that it belongs to. */
export function defineParameters(list: SyntaxNode | null, scope: Scope, draft: Draft, routine: Routine): void {
  const parameters = list?.type === 'abstract_function_declarator' ? list.field('parameters') : list;
  if (!parameters) return;
  operands(parameters).forEach((parameter, index) => {
    const declarator = parameter.field('declarator');
    const name = declarator ? nameIn(declarator) : null;
    if (!name) return;
    const given = parameter.field('default_value');
    const typeNode = parameter.field('type');
    const value = given ? cppValue(given, scope, draft) : null;
    const type = typeNode ? (calleePath(typeNode).at(-1) ?? null) : null;
    define(definitionAt(name, { how: 'parameter', value, type, scope, of: { routine, index } }), scope);
  });
}
