import type { SectionBlock } from '#guide/guide.ts';
import { element, type Html } from '../shared/html.ts';
import { renderBody } from './renderBody.ts';
import type { Rendering } from './rendering.ts';
import { renderSection } from './renderSection.ts';

/** The maker's own text under its heading. */
export function renderProse(block: SectionBlock, rendering: Rendering): Html {
  const body = renderBody(block.body, block.level, rendering);
  if (block.folded && block.heading !== null) return renderFolded(block.id, block.heading, body);
  return renderSection({ ...block, trouble: block.troubleshooting }, ...body);
}

/** For those who want to know more. */
function renderFolded(id: string, heading: string, body: readonly Html[]): Html {
  return element(
    'div',
    { class: 'section inner folded' },
    element(
      'div',
      { class: 'content' },
      element('details', { id, class: 'more' }, element('summary', {}, heading), ...body),
    ),
  );
}
