import type { ExpectBlock, MeasureBlock } from '#guide/guide.ts';
import { element, type Html } from '../shared/html.ts';
import { renderPoint } from './renderPoint.ts';

/** What the builder should now see. */
export function renderExpect(expect: ExpectBlock): Html {
  return element('p', { class: 'expect' }, expect.text);
}

/** A reading between two points, drawn as one takes it: a probe at each end, the figure between them. */
export function renderMeasure(measure: MeasureBlock): Html {
  const [from, to] = measure.between;
  if (from === undefined || measure.between.length > 2) return element('p', { class: 'reading' }, measure.text);
  return element(
    'p',
    { class: 'measure' },
    element('span', { class: 'unseen' }, to === undefined ? 'At ' : 'Between '),
    renderPoint(from),
    element('span', { class: 'wire from' }),
    to !== undefined && element('span', { class: 'unseen' }, ` and ${to} measure `),
    element('span', { class: 'reading' }, measure.expect),
    to !== undefined && element('span', { class: 'wire to' }),
    to !== undefined && renderPoint(to, null, true),
  );
}
