import { type Block, plainText } from '#core/text.ts';

/** The words of blocks, one line a paragraph, heading, list item or table row; code is left out. */
export function wordsOfBlocks(blocks: readonly Block[]): string {
  return blocks
    .map(wordsOfBlock)
    .filter((words) => words !== '')
    .join('\n');
}

function wordsOfBlock(block: Block): string {
  switch (block.kind) {
    case 'paragraph':
    case 'heading':
      return plainText(block.children);
    case 'list':
      return block.items.map((item) => wordsOfBlocks(item.blocks)).join('\n');
    case 'quote':
      return wordsOfBlocks(block.blocks);
    case 'table':
      return [block.header, ...block.rows].map((row) => row.map((cell) => plainText(cell)).join(' ')).join('\n');
    case 'code':
    case 'rule':
      return '';
  }
}
