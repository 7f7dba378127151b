import { formatMinutes } from '#guide/formatMinutes.ts';
import type { StepBlock, WorkBlock } from '#guide/guide.ts';
import { element, type Html } from '../shared/html.ts';
import { renderWholeLine } from '../shared/renderWorkLine.ts';
import { fragmentUrl } from '../shared/safeUrl.ts';
import type { Rendering } from './rendering.ts';
import { renderProse } from './renderProse.ts';
import { renderStep } from './renderStep.ts';

/** The whole work as one line and a list to choose a step from, then the steps themselves. */
export function renderWork(block: WorkBlock, rendering: Rendering): Html {
  return element(
    'section',
    { id: block.id, class: 'work', 'aria-labelledby': `${block.id}.heading` },
    element('h2', { id: `${block.id}.heading` }, 'The work, step by step'),
    element(
      'nav',
      { id: 'steps', class: 'course', 'aria-label': 'Steps' },
      renderWholeLine(rendering.line),
      element('p', { class: 'scale' }, scaleSentence(rendering)),
      element('ol', {}, ...rendering.steps.map(renderEntry)),
    ),
    ...block.blocks.map((inner) =>
      inner.kind === 'step' ? renderStep(inner, rendering) : renderProse(inner, rendering),
    ),
  );
}

function renderEntry(step: StepBlock): Html {
  return element(
    'li',
    {},
    element(
      'a',
      { href: fragmentUrl(step.id) },
      element('span', { class: 'figure' }, step.number),
      element('span', { class: 'name' }, step.heading),
    ),
    step.minutes !== null && element('span', { class: 'figure' }, formatMinutes(step.minutes.hands)),
  );
}

function scaleSentence({ line }: Rendering): string {
  return [
    line.scale === 'minutes' ? 'Drawn to the scale of time at the bench.' : 'Each stroke begins a step.',
    line.spans.some((span) => span.powered) && 'Where the line is doubled, the power is on.',
    line.spans.some((span) => span.waits) && 'Two slanting strokes mean a wait.',
  ]
    .filter(Boolean)
    .join(' ');
}
