import type { SyntaxNode } from '#core/syntax.ts';
import type { Draft } from './draft.ts';
import { operands } from './operands.ts';
import { define, definitionAt, type Scope, type Value } from './program.ts';
import { pythonValue } from './pythonValue.ts';

/** `for p in pins` gives `p` every element; names in the list are looked up in `from`. */
export function runThrough(node: SyntaxNode, from: Scope, into: Scope, draft: Draft): void {
  const left = node.field('left');
  const right = node.field('right');
  if (!left || !right) return;
  const list = pythonValue(right, from, draft);
  const counted = list.kind === 'call' && list.call.callee.join('.') === 'enumerate';
  const of = counted ? (list.call.args[0]?.value ?? list) : list;
  const name = counted ? operands(left).at(-1) : left;
  if (name?.type !== 'identifier') return;
  const value = rangeOf(of) ?? ({ kind: 'element', of, index: null, span: of.span } as const);
  define(definitionAt(name, { how: 'loop', value, scope: from }), into);
}

/** `range(2, 8)` runs from 2 to 7. */
function rangeOf(value: Value): Value | null {
  if (value.kind !== 'call' || value.call.callee.join('.') !== 'range') return null;
  const limits = value.call.args.map(({ value: limit }) => (limit.kind === 'number' ? Number(limit.text) : Number.NaN));
  const [first, second] = limits;
  if (first === undefined || limits.length > 2 || limits.some((limit) => !Number.isInteger(limit))) return null;
  const [from, to] = second === undefined ? [0, first - 1] : [first, second - 1];
  return { kind: 'range', from, to, span: value.span };
}
