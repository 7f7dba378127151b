import type { ToolRow, ToolsBlock } from '#guide/guide.ts';
import { isWebAddress } from '#guide/links.ts';
import { element, type Html } from '../shared/html.ts';
import { renderBody } from './renderBody.ts';
import type { Rendering } from './rendering.ts';
import { renderSection } from './renderSection.ts';

/** The tools, those one can do without in a list of their own. */
export function renderTools(block: ToolsBlock, rendering: Rendering): Html {
  const needed = block.rows.filter((row) => row.needed);
  const nice = block.rows.filter((row) => !row.needed);
  return renderSection(
    { id: block.id, heading: 'Tools' },
    ...renderBody(block.body, 2, rendering),
    needed.length > 0 && renderList(needed),
    nice.length > 0 && element('p', { class: 'label' }, 'Nice to have'),
    nice.length > 0 && renderList(nice),
  );
}

function renderList(rows: readonly ToolRow[]): Html {
  return element('ul', { class: 'tools' }, ...rows.map(renderTool));
}

function renderTool(row: ToolRow): Html {
  const name = row.link !== null && isWebAddress(row.link) ? element('a', { href: row.link }, row.name) : row.name;
  return element(
    'li',
    { id: row.id },
    element('span', { class: 'name' }, name),
    row.note !== null && element('span', { class: 'detail' }, row.note),
  );
}
