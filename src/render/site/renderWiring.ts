import type { WiringBlock, WiringRow } from '#guide/guide.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { classOfNames } from './classOfNames.ts';
import { formatEnd } from './formatAmount.ts';
import { renderSection } from './renderSection.ts';
import { renderStepMarks } from './renderStepMarks.ts';

/** Every connection, one a row, as the maker's wiring table has them. */
export function renderWiring(block: WiringBlock): Html {
  const wires = block.rows.some((row) => wireWords(row).length > 0 || row.note !== null);
  const steps = block.rows.some((row) => row.madeIn.length > 0);
  return renderSection(
    { id: block.id, heading: 'Wiring' },
    element(
      'table',
      { class: 'wiring' },
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          element('th', { scope: 'col' }, 'From'),
          element('th', { scope: 'col' }, 'To'),
          wires && element('th', { scope: 'col' }, 'Wire'),
          steps && element('th', { scope: 'col' }, 'Made in'),
        ),
      ),
      element('tbody', {}, ...block.rows.map((row) => renderRow(row, wires, steps))),
    ),
  );
}

function renderRow(row: WiringRow, wires: boolean, steps: boolean): Html {
  return element(
    'tr',
    { id: row.id },
    element('th', { scope: 'row', class: classOfNames([formatEnd(row.from)]) }, formatEnd(row.from)),
    element('td', { class: classOfNames([formatEnd(row.to)]) }, formatEnd(row.to)),
    wires && element('td', {}, ...wireWords(row), row.note !== null && element('span', { class: 'detail' }, row.note)),
    steps && element('td', {}, ...(row.madeIn.length > 0 ? renderStepMarks(row.madeIn) : ['no step'])),
  );
}

/** Colour, gauge, length and net, none of them broken across lines. */
function wireWords(row: WiringRow): Child[] {
  const words = [row.colour, row.gauge, row.length, row.net && `net ${row.net}`].filter(Boolean);
  return words.flatMap((word, i) => [
    i > 0 && ', ',
    element('span', { class: (word ?? '').length > 24 ? null : 'whole' }, word),
  ]);
}
