import type { ErratumBlock, NoticesBlock } from '#guide/guide.ts';
import { withStop } from '#guide/withStop.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { renderSection } from './renderSection.ts';
import { renderStepMarks } from './renderStepMarks.ts';

/** What a reader must know of the guide itself before building: where it halts, and what it has wrong. */
export function renderNotices(block: NoticesBlock): Html {
  return renderSection(
    { id: block.id, heading: 'Know this first' },
    block.halts.length > 0 &&
      element(
        'p',
        {},
        block.halts.length === 1
          ? 'This guide is not finished. When it was rehearsed, a builder had to stop at one place:'
          : `This guide is not finished. When it was rehearsed, a builder had to stop at ${block.halts.length} places:`,
      ),
    block.halts.length > 0 &&
      element(
        'ul',
        {},
        ...block.halts.map(({ message, steps }) =>
          element('li', {}, message, ...(steps.length === 0 ? [] : [' (', ...renderStepMarks(steps), ')'])),
        ),
      ),
    ...block.errata.map((erratum) => renderErratum(erratum, 'everywhere')),
  );
}

/** A correction, as it stands at its step or, with a way to that step, at the head of the page. */
export function renderErratum(erratum: ErratumBlock, where: 'here' | 'everywhere'): Html {
  const marks: Child[] =
    where === 'everywhere' && erratum.step !== null ? [' (', ...renderStepMarks([erratum.step]), ')'] : [];
  return element(
    'div',
    { class: 'erratum', role: 'note', id: where === 'here' ? erratum.id : null },
    element(
      'p',
      { class: 'label' },
      `Correction${erratum.at === null ? '' : ` of ${erratum.at}`}`,
      erratum.editions !== null && `, for ${erratum.editions}`,
      ...marks,
    ),
    element('p', {}, element('del', {}, withStop(erratum.wrong))),
    erratum.right !== null && element('p', {}, element('ins', {}, withStop(erratum.right))),
    erratum.by !== null && element('p', { class: 'detail' }, withStop(`Found by ${erratum.by}`)),
  );
}
