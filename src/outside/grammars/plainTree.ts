import type { Language, Tree, TreeCursor } from 'web-tree-sitter';
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
    const copy = { cursor, text, grammar: tree.language, hasFaults: tree.rootNode.hasError };
    const root = plainNode(copy, tree.rootNode.type, false);
    const open: (PlainNode | null)[] = [root];
    while (true) {
      if (cursor.gotoFirstChild()) {
        open.push(attach(open.at(-1) ?? null, copy));
        continue;
      }
      while (!cursor.gotoNextSibling()) {
        open.pop();
        if (open.length === 0 || !cursor.gotoParent()) return root;
      }
      open.pop();
      const parent = open.at(-1);
      assert(parent !== undefined, 'a cursor never climbs above the root');
      open.push(attach(parent, copy));
    }
  } finally {
    cursor.delete();
  }
}

interface Copy {
  readonly cursor: TreeCursor;
  readonly text: string;
  readonly grammar: Language;
  readonly hasFaults: boolean;
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

/**
 * The node under the cursor, entered with its parent; null for punctuation, which nobody asks for. Every question
 * to the cursor crosses into the parser's memory, so that few are asked.
 */
function attach(parent: PlainNode | null, copy: Copy): PlainNode | null {
  const { cursor, grammar, hasFaults } = copy;
  const id = cursor.nodeTypeId;
  const type = grammar.types[id] ?? 'ERROR';
  const isNamed = type === 'ERROR' || namedTypes(grammar)[id] === true;
  const isMissing = hasFaults && cursor.nodeIsMissing;
  const field = cursor.currentFieldName;
  if (!parent || (!isNamed && !isMissing && !field)) return null;
  const node = plainNode(copy, type, isMissing);
  if (isNamed || isMissing) parent.children.push(node);
  if (field) parent.setField(field, node);
  return node;
}

function plainNode({ cursor, text }: Copy, type: string, isMissing: boolean): PlainNode {
  return new PlainNode(type, cursor.startIndex, cursor.endIndex, type === 'ERROR' || isMissing, text);
}

const known = new WeakMap<Language, boolean[]>();

/** By a type's number, whether it is named. */
function namedTypes(grammar: Language): readonly boolean[] {
  let named = known.get(grammar);
  if (!named) {
    named = grammar.types.map((_, id) => grammar.nodeTypeIsNamed(id));
    known.set(grammar, named);
  }
  return named;
}
