import type { Span } from '#core/place.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import { numberIn } from './conditions.ts';
import { cppValue } from './cppValue.ts';
import { type Draft, type Frame, inside } from './draft.ts';
import { define, definitionAt, openScope, type Scope, type Value } from './program.ts';
import { holderOf } from './scopeAround.ts';

/** `for (int i = 2; i <= 7; i++)` gives `i` the numbers from 2 to 7. A loop that counts otherwise gives none. */
export function countingLoop(frame: Frame): Frame[] {
  const { node } = frame;
  const scope = openScope('block', null, frame.scope);
  const start = node.field('initializer');
  const name = start?.field('declarator')?.field('declarator');
  const children = inside({ ...frame, scope });
  if (!start || name?.type !== 'identifier') return children;
  define(definitionAt(name, { how: 'loop', value: rangeOf(node, name.text, scope), scope }), scope);
  return children.filter(({ node: child }) => child !== start);
}

function rangeOf(loop: SyntaxNode, name: string, scope: Scope): Value | null {
  const first = loop.field('initializer')?.field('declarator')?.field('value');
  const condition = loop.field('condition');
  const limit = condition?.field('right');
  const update = loop.field('update');
  const step = update?.type === 'update_expression' ? update.field('operator')?.text : undefined;
  if (!first || !limit || condition?.field('left')?.text !== name) return null;
  const [start, end] = [numberAt(first, scope), numberAt(limit, scope)];
  if (start === null || end === null) return null;
  // The words from the first number to the limit tell all numbers in between.
  const span: Span = [first.start, limit.end];
  switch (`${step} ${condition.field('operator')?.text}`) {
    case '++ <':
      return { kind: 'range', from: start, to: end - 1, span };
    case '++ <=':
      return { kind: 'range', from: start, to: end, span };
    case '-- >':
      return { kind: 'range', from: end + 1, to: start, span };
    case '-- >=':
      return { kind: 'range', from: end, to: start, span };
    default:
      return null;
  }
}

/** A number, or a name that the file itself gives one number. */
function numberAt(node: SyntaxNode, scope: Scope): number | null {
  if (node.type === 'number_literal') return numberIn(node.text);
  const found = node.type === 'identifier' ? (holderOf(node.text, scope)?.definitions.get(node.text) ?? []) : [];
  const [only] = found;
  return found.length === 1 && only?.value?.kind === 'number' ? numberIn(only.value.text) : null;
}

/** `for (auto p : pins)` gives `p` every element. */
export function runThrough(frame: Frame, draft: Draft): Frame[] {
  const { node } = frame;
  const scope = openScope('block', null, frame.scope);
  const list = node.field('right');
  let name = node.field('declarator');
  while (name && name.type !== 'identifier') name = name.field('declarator') ?? name.children[0] ?? null;
  if (name && list) {
    const of = cppValue(list, frame.scope, draft);
    const value: Value = { kind: 'element', of, index: null, span: of.span };
    define(definitionAt(name, { how: 'loop', value, scope: frame.scope }), scope);
  }
  return inside({ ...frame, scope });
}
