import type { PartLook, PartRow, PartsBlock } from '#guide/guide.ts';
import { withStop } from '#guide/withStop.ts';
import { formatQuantity } from '#notation/value.ts';
import { type Child, dataElement, element, type Html } from '../shared/html.ts';
import { drawPart, renderForms } from './drawings/drawPart.ts';
import { formatAmount, formatRefs } from './formatAmount.ts';
import { mostBuilds, shoppingFor, type Wanted } from './reader/shopping.ts';
import { stateWords } from './reader/shoppingWords.ts';
import { renderErrands } from './renderErrands.ts';
import type { Rendering } from './rendering.ts';
import { renderSection } from './renderSection.ts';

/** The sheet on which every part can be found, and what to buy. */
export const gatherPage = 'parts.html';

/** The same list for those whose browser runs no script, for one build. */
export const gatherFile = 'parts.csv';

export function renderGather(block: PartsBlock, wanted: readonly Wanted[], { guide }: Rendering): Html {
  const rows = block.rows.filter(({ fitted }) => fitted);
  const left = block.rows.length - rows.length;
  return element(
    'body',
    {},
    renderForms(rows.flatMap(({ look }) => look?.drawing ?? [])),
    element(
      'header',
      { class: 'opening aside' },
      element('h1', {}, 'Gather the parts'),
      element('p', { class: 'purpose' }, 'For ', element('a', { href: 'index.html' }, guide.title), '.'),
    ),
    element(
      'main',
      {},
      element(
        'nav',
        { class: 'promise way', 'aria-label': 'On this page' },
        element(
          'p',
          {},
          element('a', { href: '#bag' }, `Know ${counted(rows.length, 'part')} by their looks`),
          ' and ',
          element('a', { href: '#shopping' }, 'buy what is missing'),
          '.',
        ),
      ),
      renderSection(
        { id: 'bag', heading: 'As they lie on the bench' },
        ...keyOf(rows),
        left > 0 && element('p', { class: 'key' }, `${counted(left, 'row')} of the list, not fitted, left out here.`),
        ...groupsOf(rows).flatMap(([group, members]) => [
          group !== null && element('h3', {}, group),
          element('ul', { class: 'bag' }, ...members.map(renderPart)),
        ]),
      ),
      renderShopping(wanted),
    ),
    dataElement('application/json', wanted),
  );
}

/** How the sheet is to be read; only what it makes use of. */
function keyOf(rows: readonly PartRow[]): Html[] {
  const looks = rows.flatMap(({ look }) => look ?? []);
  const drawn = looks.some(({ drawing }) => drawing !== null);
  const lines = [
    drawn && 'The drawings are to no one scale, and show only what is known of a part.',
    looks.some(({ signs }) => signs.some(({ usual }) => usual)) &&
      'What stands in italics is what makers mostly do: common practice, and no promise.',
    looks.some(({ drawing }) => drawing?.kind === 'banded' && drawing.bands.length > 1) &&
      'Bands are read from the end that they begin nearer to; the last one, apart from the others, is the tolerance.',
  ].filter((one): one is string => typeof one === 'string');
  return lines.length === 0 ? [] : [element('p', { class: 'key' }, lines.join(' '))];
}

function renderPart(row: PartRow): Html {
  const refs = formatRefs(row.refs);
  const value = row.value === null ? (row.stated ?? null) : formatQuantity(row.value.kind, row.value.si);
  return element(
    'li',
    { id: row.id },
    element(
      'div',
      { class: row.look?.drawing ? 'drawn' : 'drawn undrawn' },
      row.look?.drawing ? drawPart(row.look.drawing) : null,
    ),
    element(
      'div',
      { class: 'told' },
      element(
        'p',
        { class: 'what' },
        element('input', {
          type: 'checkbox',
          class: 'tick-box',
          'aria-label': `${refs === '' ? row.description : refs} lies ready`,
        }),
        refs !== '' && element('span', { class: 'refs' }, refs),
        element('span', { class: 'name' }, row.description),
        value !== null && element('span', { class: 'value' }, value),
        element('span', { class: 'much' }, ...amountOf(row)),
      ),
      ...particularsOf(row).map((line) => element('p', { class: 'detail' }, line)),
      ...signsOf(row.look ?? null),
    ),
  );
}

function amountOf(row: PartRow): Child[] {
  const counted = row.amounts.every(({ unit }) => unit === 'pcs');
  const amount = row.amounts.length === 0 ? '?' : row.amounts.map(formatAmount).join(' or ');
  const spares = row.spares === undefined ? '' : ` + ${row.spares} spare`;
  return [element('span', { class: 'unseen' }, 'amount '), `${counted ? '×\u00a0' : ''}${amount}${spares}`];
}

/** What the list says that helps to find it: ratings, body and number; then the maker's note. */
function particularsOf(row: PartRow): string[] {
  const facts = [...row.ratings.map(({ kind, si }) => formatQuantity(kind, si)), row.package, row.mpn]
    .filter((fact) => fact !== null)
    .join(', ');
  return [facts, row.note === null ? '' : withStop(row.note)].filter((line) => line !== '');
}

function signsOf(look: PartLook | null): Html[] {
  if (look === null || look.signs.length === 0) return [];
  const words = look.signs.map(
    ({ words: said, usual }, i): Child => [i > 0 && ' ', usual ? element('span', { class: 'usual' }, said) : said],
  );
  return [element('p', { class: 'signs' }, ...words)];
}

function renderShopping(wanted: readonly Wanted[]): Html {
  const shopping = shoppingFor(wanted, 1, new Set());
  return renderSection(
    { id: 'shopping', heading: 'What to buy' },
    element(
      'p',
      { class: 'ask builds', hidden: true },
      element('label', { for: 'builds' }, 'For how many builds'),
      element('input', {
        id: 'builds',
        type: 'number',
        min: 1,
        max: mostBuilds,
        step: 1,
        value: 1,
        inputmode: 'numeric',
      }),
    ),
    element('p', { class: 'tally', id: 'state', role: 'status' }, stateWords(1, 0, wanted.length)),
    ...renderErrands(shopping),
    element(
      'p',
      { class: 'take' },
      'The list as it stands here, for a spreadsheet: ',
      element('a', { id: 'take', href: gatherFile, download: true }, gatherFile),
      '.',
    ),
  );
}

function counted(n: number, noun: string): string {
  return `${n === 1 ? 'one' : n} ${noun}${n === 1 ? '' : 's'}`;
}

/** Rows of one group stay together, in the order in which the groups first come. */
function groupsOf(rows: readonly PartRow[]): [string | null, PartRow[]][] {
  const groups = new Map<string | null, PartRow[]>();
  for (const row of rows) groups.set(row.group, [...(groups.get(row.group) ?? []), row]);
  return [...groups];
}
