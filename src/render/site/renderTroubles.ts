import type { TroublesBlock } from '#guide/guide.ts';
import { withStop } from '#guide/withStop.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { renderSection } from './renderSection.ts';
import { renderStepMarks } from './renderStepMarks.ts';

/** What went wrong on the maker's bench, by what was seen there. */
export function renderTroubles(block: TroublesBlock): Html {
  return renderSection(
    { id: block.id, heading: 'What went wrong before', trouble: true },
    element(
      'dl',
      { class: 'troubles' },
      ...block.rows.map((row) =>
        element(
          'div',
          {},
          element('dt', {}, withStop(row.symptom)),
          row.reading !== null && element('dd', {}, element('span', { class: 'reading' }, row.reading)),
          row.cause !== null && element('dd', {}, withStop(row.cause)),
          row.remedy !== null && element('dd', {}, withStop(row.remedy), ...toStep(row)),
          row.remedy === null && row.step !== null && element('dd', {}, ...toStep(row)),
        ),
      ),
    ),
  );
}

function toStep({ step }: TroublesBlock['rows'][number]): Child[] {
  return step === null ? [] : [' (', ...renderStepMarks([step]), ')'];
}
