import type { SyntaxNode } from '#core/syntax.ts';

/** The children that carry meaning: no comments, no faults. */
export function operands(node: SyntaxNode): SyntaxNode[] {
  return node.children.filter(({ type, isError }) => type !== 'comment' && !isError);
}
