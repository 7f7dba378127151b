import type { Block, Inline } from '#core/text.ts';
import { oneLine, type Seen } from './readHtml.ts';

/** The same of our own tree of blocks. */
export function readBlocks(blocks: readonly Block[]): Seen {
  const pictures: { url: string; alt: string }[] = [];
  const links: { url: string; words: string }[] = [];
  const code: string[] = [];

  const inlineWords = (nodes: readonly Inline[]): string => nodes.map(wordsOf).join('');
  function wordsOf(node: Inline): string {
    switch (node.kind) {
      case 'text':
        return node.value;
      case 'break':
        return ' ';
      case 'code':
        code.push(oneLine(node.value));
        return node.value;
      case 'picture':
        pictures.push({ url: node.picture.url, alt: node.picture.alt });
        return '';
      case 'link': {
        const words = inlineWords(node.children);
        links.push({ url: node.url, words: oneLine(words) });
        return words;
      }
      default:
        return inlineWords(node.children);
    }
  }
  function blockWords(block: Block): string {
    switch (block.kind) {
      case 'paragraph':
      case 'heading':
        return inlineWords(block.children);
      case 'list':
        return block.items.map((item) => item.blocks.map(blockWords).join(' ')).join(' ');
      case 'quote':
        return block.blocks.map(blockWords).join(' ');
      case 'code':
        code.push(oneLine(block.value));
        return block.value;
      case 'table':
        return [block.header, ...block.rows].map((row) => row.map(inlineWords).join(' ')).join(' ');
      case 'rule':
        return '';
    }
  }
  const words = oneLine(blocks.map(blockWords).join(' '));
  return { words, pictures, links, code };
}
