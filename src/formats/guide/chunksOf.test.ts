import fc from 'fast-check';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { blocksFromTree } from './blocksFromTree.ts';
import { chunksOf } from './chunksOf.ts';
import { normalisedLabel } from './linkDefinitions.ts';
import { parseMarkdown } from './parseMarkdown.ts';

const folders = { fileExists: () => null, pictureRoots: [] };

function sourceOf(text: string): SourceText {
  return { file: 'guide.md', text, encoding: 'utf-8', bom: false, hash: '', lineStarts: lineStartsOf(text) };
}

function blocksByChunk(text: string) {
  const { nodes, definitions } = parseMarkdown(text);
  return nodes.flatMap(({ node, shift }) =>
    blocksFromTree(node, { source: sourceOf(text), shift, definitions, folders }),
  );
}

/** The same with the whole text parsed at once. */
function blocksAtOnce(text: string) {
  const root = fromMarkdown(text, { extensions: [gfm()], mdastExtensions: [gfmFromMarkdown()] });
  const definitions = new Map();
  const collect = (node: { children?: unknown[]; type: string }) => {
    if (node.type === 'definition') {
      const label = normalisedLabel((node as unknown as { label: string }).label);
      if (!definitions.has(label)) definitions.set(label, node);
    }
    for (const child of node.children ?? []) collect(child as never);
  };
  collect(root as never);
  return root.children.flatMap((node) =>
    blocksFromTree(node, { source: sourceOf(text), shift: 0, definitions, folders }),
  );
}

describe('chunksOf', () => {
  it('cuts before headings that follow a blank line, and covers the text', () => {
    expect(chunksOf('a\n\n# b\n\nc\n# d\n\n## e')).toEqual([
      { start: 0, end: 3 },
      { start: 3, end: 15 },
      { start: 15, end: 19 },
    ]);
  });

  it('does not cut inside fenced code or an open comment', () => {
    expect(chunksOf('```\n\n# no\n\n```\n\n# yes')).toHaveLength(2);
    expect(chunksOf('<!--\n\n# no\n\n-->\n\n# yes')).toHaveLength(2);
  });

  it('stops cutting where an indented fence leaves open what the next heading is', () => {
    const text = '- a\n\n  ```\n\n# closes the list\n\n```\n\n# in code\n\n```\n';
    expect(chunksOf(text)).toHaveLength(1);
    expect(blocksByChunk(text)).toEqual(blocksAtOnce(text));
  });

  it('lets pieces mean the same as the whole, with links and footnotes defined anywhere', () => {
    const line = fc.constantFrom(
      '# One',
      '\n# Two',
      '\n## Again',
      '\n# [T]',
      'Three\n---',
      'See [the table][t] and [T].',
      '![pic][p]',
      '[t]: notes/t.md "T"',
      '[p]: <a b.png>',
      '  [t]: other.md',
      '> [q]: quoted.md',
      'as [q] says[^n]',
      'see[^n]',
      '[^n]: A note.',
      '    indented',
      '- item',
      '  more',
      '1. one',
      '```',
      '~~~~',
      '  ```',
      '<!-- open',
      '-->',
      '<div>',
      '</div>',
      '<pre>',
      '</pre>',
      '| a | b |',
      '| - | - |',
      '| [t] | c |',
      '',
      '\t- tab',
      '> quote',
      '***',
      '{: .x }',
      '<?php',
      '?>',
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 24 }), fc.constantFrom('\n', '\r\n', '\r'), (lines, end) => {
        const text = lines.join('\n').replaceAll('\n', end).replaceAll('{: .x }', '');
        expect(blocksByChunk(text)).toEqual(blocksAtOnce(text));
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});
