import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import type { Block, Inline } from '#core/text.ts';
import { placeInside } from '#prose/placeInside.ts';

/** A link of the guide; its place is the address where it stands in the text, else the block. */
export interface GuideLink {
  readonly url: string;
  readonly place: TextPlace;
}

/** The links of a section, in reading order. */
export function linksOf(section: Section): GuideLink[] {
  return section.blocks.flatMap((block) => linksOfBlock(block));
}

function linksOfBlock(block: Block): GuideLink[] {
  switch (block.kind) {
    case 'paragraph':
    case 'heading':
      return placed(block.children, block.place);
    case 'list':
      return block.items.flatMap(({ blocks }) => blocks.flatMap(linksOfBlock));
    case 'quote':
      return block.blocks.flatMap(linksOfBlock);
    case 'table':
      return [block.header, ...block.rows].flatMap((row) => row.flatMap((cell) => placed(cell, block.place)));
    default:
      return [];
  }
}

function placed(nodes: readonly Inline[], place: TextPlace): GuideLink[] {
  return urlsOf(nodes).map((url) => {
    const at = place.quote.indexOf(url);
    return { url, place: at < 0 ? place : placeInside(place, at, at + url.length) };
  });
}

function urlsOf(nodes: readonly Inline[]): string[] {
  return nodes.flatMap((node) => {
    if (node.kind === 'link') return [node.url, ...urlsOf(node.children)];
    return 'children' in node ? urlsOf(node.children) : [];
  });
}
