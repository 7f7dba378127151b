import type { SyntaxNode } from '#core/syntax.ts';
import { calleePath } from './cppValue.ts';

/** Nodes that introduce a name, or lead to one. */
export const declaratorTypes = new Set([
  'identifier',
  'field_identifier',
  'init_declarator',
  'array_declarator',
  'pointer_declarator',
  'reference_declarator',
  'function_declarator',
]);

/** The name that a declarator introduces, whatever pointers and brackets stand around it. */
export function nameIn(declarator: SyntaxNode): SyntaxNode | null {
  let node: SyntaxNode | null = declarator;
  for (let hops = 0; node && hops < 20; hops++) {
    if (node.type === 'identifier' || node.type === 'field_identifier') return node;
    node = node.field('declarator') ?? node.children.find(({ type }) => declaratorTypes.has(type)) ?? null;
  }
  return null;
}

/** The name of a class; `struct { … } pins;` goes by the name behind its body. */
export function typeName(typeNode: SyntaxNode, text: string): string | null {
  if (!typeNode.type.endsWith('_specifier') || typeNode.type === 'sized_type_specifier')
    return calleePath(typeNode).at(-1) ?? null;
  return typeNode.field('name')?.text ?? nameBehind(typeNode, text);
}

/** The name that follows the body of a class which has none of its own, as in `typedef struct { … } Pins;`. */
export function nameBehind(node: SyntaxNode, text: string): string | null {
  return /^\s*(\w+)/.exec(text.slice(node.end, node.end + 80))?.[1] ?? null;
}

/** Numbers and texts, as against classes. */
export function isPlainType(node: SyntaxNode): boolean {
  if (node.type === 'primitive_type' || node.type === 'sized_type_specifier') return true;
  return /^(u?int(_fast|_least)?\d+_t|byte|word|boolean|String|gpio_num_t|pin_size_t|PinName|auto|uint)$/.test(
    node.text,
  );
}
