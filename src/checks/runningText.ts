import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import type { Block, Inline } from '#core/text.ts';

/** A run of words: a paragraph, a heading inside a block, or a table cell (with the place of its table). */
export interface Run {
  readonly nodes: readonly Inline[];
  readonly place: TextPlace;
}

/** The runs of a section in reading order; its facts are not among them. */
export function runsOf(section: Section): Run[] {
  return section.blocks.flatMap(runsOfBlock);
}

/** Every node of running text, with those inside of others. */
export function everyInline(nodes: readonly Inline[]): Inline[] {
  return nodes.flatMap((node) => ('children' in node ? [node, ...everyInline(node.children)] : [node]));
}

function runsOfBlock(block: Block): Run[] {
  const { place } = block;
  switch (block.kind) {
    case 'paragraph':
    case 'heading':
      return [{ nodes: block.children, place }];
    case 'list':
      return block.items.flatMap(({ blocks }) => blocks.flatMap(runsOfBlock));
    case 'quote':
      return block.blocks.flatMap(runsOfBlock);
    case 'table':
      return [block.header, ...block.rows].flatMap((cells) => cells.map((nodes) => ({ nodes, place })));
    default:
      return [];
  }
}
