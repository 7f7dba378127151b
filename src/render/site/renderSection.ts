import { type Child, element, type Html } from '../shared/html.ts';
import { renderBranch } from '../shared/renderWorkLine.ts';
import { headingAt } from './headingAt.ts';

/** A part of the page under its heading. Headings below the second rank stand in the text's own column. */
export function renderSection(
  section: {
    readonly id: string;
    readonly heading: string | null;
    readonly level?: number;
    readonly trouble?: boolean;
  },
  ...content: Child[]
): Html {
  const level = section.level ?? 2;
  const heading = section.heading === null ? null : `${section.id}.heading`;
  return element(
    'section',
    {
      id: section.id,
      class: classOf(level, section.heading),
      'aria-labelledby': heading,
      'data-trouble': section.trouble === true,
    },
    level === 2 && section.heading !== null && renderBranch(),
    section.heading !== null && heading !== null && element(headingAt(level), { id: heading }, section.heading),
    content.length > 0 && element('div', { class: 'content' }, ...content),
  );
}

function classOf(level: number, heading: string | null): string {
  if (heading === null) return 'section bare';
  return level === 2 ? 'section' : 'section inner';
}
