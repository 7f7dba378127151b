import type { Block, Inline, PictureRef } from '#core/text.ts';

/** Every picture that blocks show, in reading order. */
export function picturesOf(blocks: readonly Block[]): PictureRef[] {
  return blocks.flatMap(picturesOfBlock);
}

function picturesOfBlock(block: Block): PictureRef[] {
  switch (block.kind) {
    case 'paragraph':
    case 'heading':
      return picturesIn(block.children);
    case 'list':
      return block.items.flatMap((item) => picturesOf(item.blocks));
    case 'quote':
      return picturesOf(block.blocks);
    case 'table':
      return [block.header, ...block.rows].flatMap((row) => row.flatMap(picturesIn));
    case 'code':
    case 'rule':
      return [];
  }
}

function picturesIn(nodes: readonly Inline[]): PictureRef[] {
  return nodes.flatMap((node) =>
    node.kind === 'picture' ? [node.picture] : 'children' in node ? picturesIn(node.children) : [],
  );
}
