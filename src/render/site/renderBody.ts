import type { BodyBlock, ListBlock, TableBlock } from '#guide/guide.ts';
import { listed } from '#guide/listed.ts';
import { plainWords } from '#guide/plainWords.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { renderCautions } from '../shared/renderCaution.ts';
import { headingAt } from './headingAt.ts';
import { highlight } from './highlight.ts';
import { renderExpect, renderMeasure } from './renderChecks.ts';
import type { Rendering } from './rendering.ts';
import { renderMistake } from './renderMistake.ts';
import { renderMissingPicture, renderPicture } from './renderPicture.ts';
import { renderWords } from './renderWords.ts';

/** The maker's text. `level` is the rank of the heading it stands under. */
export function renderBody(body: readonly BodyBlock[], level: number, rendering: Rendering): Html[] {
  return body.flatMap((block) => renderBlock(block, level, rendering));
}

function renderBlock(block: BodyBlock, level: number, rendering: Rendering): Html | Html[] {
  switch (block.kind) {
    case 'paragraph':
      return element('p', {}, ...renderWords(block.words, rendering));
    case 'heading':
      return element(headingAt(level + 1), {}, ...renderWords(block.words, rendering));
    case 'list':
      return renderList(block, level, rendering);
    case 'listing':
      return element('pre', { tabindex: 0 }, element('code', {}, ...highlight(block.text, block.language)));
    case 'quote':
      return element('blockquote', {}, ...renderBody(block.body, level, rendering));
    case 'table':
      return renderTable(block, rendering);
    case 'rule':
      return element('hr');
    case 'picture':
      return renderPicture(block, rendering);
    case 'missingPicture':
      return renderMissingPicture(block);
    case 'caution':
      return renderCautions([block]);
    case 'mistake':
      return renderMistake(block);
    case 'measure':
      return renderMeasure(block);
    case 'expect':
      return renderExpect(block);
  }
}

function renderList(list: ListBlock, level: number, rendering: Rendering): Html {
  const items = list.items.map((item) =>
    element(
      'li',
      { class: item.done === null ? null : item.done ? 'done' : 'open' },
      item.done === true && element('span', { class: 'unseen' }, 'Done: '),
      ...renderItem(item.body, level, rendering),
    ),
  );
  if (!list.ordered) return element('ul', {}, ...items);
  return element('ol', { start: list.start === 1 ? null : list.start }, ...items);
}

/** An item that is one paragraph needs no paragraph around it. */
function renderItem(body: readonly BodyBlock[], level: number, rendering: Rendering): Child[] {
  const [first, ...rest] = body;
  if (first?.kind !== 'paragraph') return renderBody(body, level, rendering);
  return [...renderWords(first.words, rendering), ...renderBody(rest, level, rendering)];
}

/** A table is named by what its columns hold. */
function nameOf({ header }: TableBlock): string {
  const columns = header.map((cell) => plainWords(cell).trim()).filter((words) => words !== '');
  return columns.length === 0 ? 'Table' : `Table of ${listed(columns)}`;
}

function renderTable(table: TableBlock, rendering: Rendering): Html {
  const alignOf = (column: number) => (table.align[column] ? `align-${table.align[column]}` : null);
  return element(
    'div',
    { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': nameOf(table) },
    element(
      'table',
      {},
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          ...table.header.map((cell, i) =>
            element('th', { scope: 'col', class: alignOf(i) }, ...renderWords(cell, rendering)),
          ),
        ),
      ),
      element(
        'tbody',
        {},
        ...table.rows.map((row) =>
          element(
            'tr',
            {},
            ...row.map((cell, i) => element('td', { class: alignOf(i) }, ...renderWords(cell, rendering))),
          ),
        ),
      ),
    ),
  );
}
