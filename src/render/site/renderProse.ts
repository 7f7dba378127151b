import type { SectionBlock } from '#guide/guide.ts';
import type { Html } from '../shared/html.ts';
import { renderBody } from './renderBody.ts';
import type { Rendering } from './rendering.ts';
import { renderSection } from './renderSection.ts';

/** The maker's own text under its heading. */
export function renderProse(block: SectionBlock, rendering: Rendering): Html {
  return renderSection(block, ...renderBody(block.body, block.level, rendering));
}
