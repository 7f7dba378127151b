import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import type { Block } from '#core/text.ts';

/** The places of a section's paragraphs, list items and table: its words without headings, code and facts. */
export function blocksOfWords(section: Section): TextPlace[] {
  return section.blocks.flatMap(placesOf);
}

function placesOf(block: Block): TextPlace[] {
  if (block.kind === 'list') return block.items.flatMap(({ blocks }) => blocks.flatMap(placesOf));
  if (block.kind === 'quote') return block.blocks.flatMap(placesOf);
  return block.kind === 'paragraph' || block.kind === 'table' ? [block.place] : [];
}
