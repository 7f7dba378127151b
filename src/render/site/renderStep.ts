import type { StepBlock, StepJoin } from '#guide/guide.ts';
import { withStop } from '#guide/withStop.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { renderCautions } from '../shared/renderCaution.ts';
import { renderLineAt } from '../shared/renderWorkLine.ts';
import { fragmentUrl } from '../shared/safeUrl.ts';
import { formatEnd } from './formatAmount.ts';
import { headingAt } from './headingAt.ts';
import { renderBody } from './renderBody.ts';
import { renderGlosses } from './renderGlosses.ts';
import type { Rendering } from './rendering.ts';
import { isBareYes, renderNeeds } from './renderNeeds.ts';
import { renderErratum } from './renderNotices.ts';
import { renderPoint } from './renderPoint.ts';
import { reportAddress } from './reportAddress.ts';

/** One step: where it lies on the line of work, what it needs, what can hurt, what to do, what to find after. */
export function renderStep(step: StepBlock, rendering: Rendering): Html {
  const heading = `${step.id}.heading`;
  const span = rendering.line.spans.find((candidate) => candidate.number === step.number);
  return element(
    'section',
    { id: step.id, class: 'step', 'aria-labelledby': heading },
    span ? renderLineAt(span) : null,
    element(
      headingAt(step.level),
      { id: heading },
      element('span', { class: 'numeral' }, element('span', { class: 'unseen' }, 'Step '), step.number),
      ' ',
      step.heading,
    ),
    renderNeeds(step),
    element(
      'div',
      { class: 'content' },
      ...step.errata.map((erratum) => renderErratum(erratum, 'here')),
      ...renderCautions(step.cautions),
      renderGlosses(step.words),
      step.irreversible !== null && element('p', { class: 'irreversible' }, irreversibleText(step.irreversible)),
      renderBeforePower(step, rendering),
      ...renderBody(step.body, step.level, rendering),
      step.removes.length > 0 && element('p', {}, `Take away: ${step.removes.join(', ')}.`),
      renderJoins(step),
      renderOutcome(step, rendering),
      ...renderBody(step.mistakes, step.level, rendering),
      renderOnward(step, rendering),
    ),
  );
}

function irreversibleText(text: string): string {
  return isBareYes(text)
    ? 'What this step does cannot be undone.'
    : withStop(`What this step does cannot be undone: ${text}`);
}

function renderJoins(step: StepBlock): Html | null {
  if (step.joins.length === 0) return null;
  return element(
    'div',
    { class: 'joins' },
    element(headingAt(step.level + 1), { class: 'label' }, 'The connections of this step'),
    element('ul', {}, ...step.joins.map(renderJoin)),
  );
}

/** A connection as a line between its ends; who only hears it hears `U1.D5, green, to R1.1`. */
function renderJoin(join: StepJoin): Html {
  const wire = [join.colour, join.length].filter(Boolean).join(', ');
  return element(
    'li',
    {},
    renderPoint(formatEnd(join.from), join.row === null ? null : fragmentUrl(join.row)),
    element('span', { class: wire === '' ? 'wire from to' : 'wire from' }),
    ...(wire === ''
      ? [unseen(' to ')]
      : [
          unseen(', '),
          element('span', { class: 'wire-note' }, wire),
          unseen(', to '),
          element('span', { class: 'wire to' }),
        ]),
    renderPoint(formatEnd(join.to)),
  );
}

function unseen(words: string): Html {
  return element('span', { class: 'unseen' }, words);
}

function renderBeforePower(step: StepBlock, rendering: Rendering): Child {
  if (step.beforePower.length === 0) return null;
  return element(
    'div',
    { class: 'outcome' },
    element(headingAt(step.level + 1), { class: 'label' }, 'Before the power goes on, measure'),
    ...renderBody(step.beforePower, step.level + 1, rendering),
  );
}

function renderOutcome(step: StepBlock, rendering: Rendering): Child {
  if (step.makes.length === 0 && step.checks.length === 0) return null;
  return element(
    'div',
    { class: 'outcome' },
    element(headingAt(step.level + 1), { class: 'label' }, outcomeLabel(step)),
    ...step.makes.map((name) => element('p', { class: 'expect' }, name)),
    ...renderBody(step.checks, step.level + 1, rendering),
  );
}

function outcomeLabel(step: StepBlock): string {
  const verbs = [
    step.makes.length > 0 && 'have',
    step.checks.some((check) => check.kind === 'expect') && 'see',
    step.checks.some((check) => check.kind === 'measure') && 'measure',
  ].filter((verb) => verb !== false);
  return `You should now ${verbs.length < 3 ? verbs.join(' and ') : 'have, see and measure'}`;
}

/** The way on and back, so that a reader at the bench need never scroll for it. */
function renderOnward(step: StepBlock, { guide, steps }: Rendering): Html {
  const report = reportAddress(guide, step);
  const before = steps.find((other) => other.number === step.number - 1);
  const next = steps.find((other) => other.number === step.number + 1);
  return element(
    'p',
    { class: 'onward' },
    before ? element('a', { href: fragmentUrl(before.id) }, `Back to ${before.number}`) : null,
    element('a', { href: '#steps' }, 'All steps'),
    report !== null && element('a', { class: 'report', href: report }, 'Report an error in this step'),
    next ? element('a', { class: 'next', href: fragmentUrl(next.id) }, `On to ${next.number}, ${next.heading}`) : null,
  );
}
