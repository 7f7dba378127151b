import spec from 'commonmark-spec';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import type { Block } from '#core/text.ts';
import { blocksFromTree } from '#formats/guide/blocksFromTree.ts';
import { parseMarkdown } from '#formats/guide/parseMarkdown.ts';
import leftOut from './leftOut.json';
import { readBlocks } from './readBlocks.ts';
import { readHtml, type Seen } from './readHtml.ts';

const reasons = new Map(leftOut.examples.map(({ number, why }) => [number, why]));
// The specification prints tabs as arrows.
const examples = spec.tests.map((example) => ({
  ...example,
  markdown: example.markdown.replaceAll('→', '\t'),
  html: example.html.replaceAll('→', '\t'),
}));

describe('the text of a guide, against the examples of CommonMark 0.31.2', () => {
  it('knows all 652 examples', () => {
    expect(examples).toHaveLength(652);
  });
  for (const { number, section, markdown, html } of examples) {
    if (reasons.has(number)) continue;
    it(`reads the same words, pictures, links and code as example ${number} (${section})`, () => {
      expect(comparable(readBlocks(blocksOf(markdown)))).toEqual(comparable(readHtml(html)));
    });
  }
});

function blocksOf(text: string): Block[] {
  const source: SourceText = {
    file: 'example.md',
    text,
    encoding: 'utf-8',
    bom: false,
    hash: '',
    lineStarts: lineStartsOf(text),
  };
  const { nodes, definitions } = parseMarkdown(text);
  const folders = { fileExists: () => null, pictureRoots: [] };
  return nodes.flatMap(({ node, shift }) => blocksFromTree(node, { source, shift, definitions, folders }));
}

/** Addresses may be percent-encoded or not. */
function comparable(seen: Seen): Seen {
  const plain = (url: string) => {
    try {
      return decodeURI(url);
    } catch {
      return url;
    }
  };
  return {
    ...seen,
    pictures: seen.pictures.map((picture) => ({ ...picture, url: plain(picture.url) })),
    links: seen.links.map((link) => ({ ...link, url: plain(link.url) })),
  };
}
