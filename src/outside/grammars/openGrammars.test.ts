import { describe, expect, it } from 'vitest';
import type { SyntaxNode } from '#core/syntax.ts';
import { openGrammars } from './openGrammars.ts';

const grammars = openGrammars();

describe('openGrammars', () => {
  it('counts offsets in UTF-16 code units, also after signs outside the basic plane', async () => {
    const text = 'const char* greeting = "é😀";\nconst int LED = 5;\n';
    const tree = await grammars.parse('cpp', text);
    const five = find(tree, (node) => node.type === 'number_literal');
    expect(five && [five.start, five.end]).toEqual([text.indexOf('5;'), text.indexOf('5;') + 1]);
    expect(five?.text).toBe('5');
    expect(tree.end).toBe(text.length);
  });

  it('finds children by the field names of the grammar, unnamed operators included', async () => {
    const tree = await grammars.parse('python', 'a = b + 1\n');
    const sum = find(tree, (node) => node.type === 'binary_operator');
    expect(sum?.field('left')?.text).toBe('b');
    expect(sum?.field('operator')?.text).toBe('+');
    expect(sum?.field('nothing')).toBeNull();
    expect(sum?.children.map((child) => child.text)).toEqual(['b', '1']);
  });

  it('marks what makes no sense and reads the rest', async () => {
    const tree = await grammars.parse('cpp', 'int a = ;;; ) 5 }\nconst int LED = 7;\n');
    expect(find(tree, (node) => node.isError)).not.toBeNull();
    expect(find(tree, (node) => node.text === '7')).not.toBeNull();
  });

  it('keeps every child inside its parent and in order', async () => {
    const tree = await grammars.parse('cpp', '#if 0\nint a;\n#else\nvoid f(int p) { g(p, {1, 2}); }\n#endif\n');
    const open = [tree];
    for (let node = open.pop(); node; node = open.pop()) {
      let from = node.start;
      for (const child of node.children) {
        expect(child.start).toBeGreaterThanOrEqual(from);
        expect(child.end).toBeLessThanOrEqual(node.end);
        from = child.end;
        open.push(child);
      }
    }
  });

  it('reads brackets nested 20,000 deep without running out of stack', async () => {
    const text = `int a = ${'('.repeat(20_000)}1${')'.repeat(20_000)};`;
    const tree = await grammars.parse('cpp', text);
    expect(tree.end).toBe(text.length);
  });

  it('can parse many texts at once', async () => {
    const trees = await Promise.all(
      Array.from({ length: 20 }, (_, i) => grammars.parse(i % 2 ? 'cpp' : 'python', i % 2 ? 'int a;' : 'a = 1')),
    );
    expect(trees.map((tree) => tree.type)).toEqual(trees.map((_, i) => (i % 2 ? 'translation_unit' : 'module')));
  });
});

function find(root: SyntaxNode, wanted: (node: SyntaxNode) => boolean): SyntaxNode | null {
  const open = [root];
  for (let node = open.pop(); node; node = open.pop()) {
    if (wanted(node)) return node;
    open.push(...node.children);
  }
  return null;
}
