import type { Tree, TreeCursor } from 'web-tree-sitter';
import { assert } from '#core/failure.ts';
import type { SyntaxNode } from '#core/syntax.ts';

/**
 * Copies a parser's tree into plain objects that outlive it. `children` holds named nodes and faults (stretches
 * that make no sense, and tokens that the parser had to imagine); `field` also finds unnamed ones, such as an
 * operator. A loop instead of recursion: sources can nest deeper than the stack.
 */
export function plainTree(tree: Tree, text: string): SyntaxNode {
  const cursor = tree.walk();
  try {
    const root = plainNode(cursor, text);
    const open = [root];
    while (true) {
      const parent = open.at(-1);
      assert(parent, 'a cursor never climbs above the root');
      if (cursor.gotoFirstChild()) {
        open.push(attach(parent, cursor, text));
        continue;
      }
      while (!cursor.gotoNextSibling()) {
        open.pop();
        if (open.length === 0 || !cursor.gotoParent()) return root;
      }
      open.pop();
      const next = open.at(-1);
      if (!next) return root;
      open.push(attach(next, cursor, text));
    }
  } finally {
    cursor.delete();
  }
}

class PlainNode implements SyntaxNode {
  readonly children: PlainNode[] = [];
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly isError: boolean;
  readonly #source: string;
  #fields: Map<string, PlainNode> | null = null;

  constructor(type: string, start: number, end: number, isError: boolean, source: string) {
    this.type = type;
    this.start = start;
    this.end = end;
    this.isError = isError;
    this.#source = source;
  }

  get text(): string {
    return this.#source.slice(this.start, this.end);
  }

  field(name: string): PlainNode | null {
    return this.#fields?.get(name) ?? null;
  }

  /** Of several children under one field name the first is kept. */
  setField(name: string, child: PlainNode): void {
    this.#fields ??= new Map();
    if (!this.#fields.has(name)) this.#fields.set(name, child);
  }
}

function plainNode(cursor: TreeCursor, text: string): PlainNode {
  const isError = cursor.nodeType === 'ERROR' || cursor.nodeIsMissing;
  return new PlainNode(cursor.nodeType, cursor.startIndex, cursor.endIndex, isError, text);
}

function attach(parent: PlainNode, cursor: TreeCursor, text: string): PlainNode {
  const node = plainNode(cursor, text);
  if (cursor.nodeIsNamed || node.isError) parent.children.push(node);
  const field = cursor.currentFieldName;
  if (field) parent.setField(field, node);
  return node;
}
