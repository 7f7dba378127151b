import type { PartRow, PartsBlock } from '#guide/guide.ts';
import { isWebAddress } from '#guide/links.ts';
import { formatQuantity } from '#notation/value.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { formatAmount, formatMoney, formatRefs } from './formatAmount.ts';
import { renderBody } from './renderBody.ts';
import type { Rendering } from './rendering.ts';
import { renderSection } from './renderSection.ts';
import { renderStepMarks } from './renderStepMarks.ts';

/** The bill of materials: few columns, so that it stays a table on a phone; the particulars in the row itself. */
export function renderParts(block: PartsBlock, rendering: Rendering): Html {
  return renderSection(
    { id: block.id, heading: 'Parts' },
    ...renderBody(block.body, 2, rendering),
    block.rows.length > 0 && renderTable(block.rows),
  );
}

function renderTable(rows: readonly PartRow[]): Html {
  const columns = {
    refs: rows.some((row) => row.refs.length > 0),
    price: rows.some((row) => row.price !== null),
  };
  return element(
    'table',
    { class: 'parts' },
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        columns.refs && element('th', { scope: 'col' }, 'Ref.'),
        element('th', { scope: 'col' }, 'Part'),
        element('th', { scope: 'col', class: 'align-right' }, 'Qty'),
        columns.price && element('th', { scope: 'col', class: 'align-right' }, 'Price'),
      ),
    ),
    ...groupsOf(rows).map(([group, members]) =>
      element(
        'tbody',
        {},
        group !== null &&
          element(
            'tr',
            { class: 'group' },
            element('th', { scope: 'rowgroup', colspan: 2 + Number(columns.refs) + Number(columns.price) }, group),
          ),
        ...members.map((row) => renderRow(row, columns)),
      ),
    ),
  );
}

function renderRow(row: PartRow, columns: { readonly refs: boolean; readonly price: boolean }): Html {
  const name = [element('span', { class: 'name' }, row.description), ...renderParticulars(row)];
  return element(
    'tr',
    { id: row.id, class: row.fitted ? null : 'not-fitted' },
    columns.refs && element('th', { scope: 'row', class: 'refs' }, formatRefs(row.refs)),
    columns.refs ? element('td', {}, ...name) : element('th', { scope: 'row' }, ...name),
    element('td', { class: 'number' }, row.fitted ? amountText(row) : 'not fitted'),
    columns.price && element('td', { class: 'number' }, ...priceOf(row)),
  );
}

/** What a pack costs, its size below it. */
function priceOf({ price }: PartRow): Child[] {
  if (price === null) return [];
  return [formatMoney(price), price.per !== 1 && element('span', { class: 'detail' }, `for ${price.per}`)];
}

function amountText(row: PartRow): string {
  return row.amounts.length === 0 ? 'not said' : row.amounts.map(formatAmount).join(' or ');
}

function renderParticulars(row: PartRow): Html[] {
  const value = [row.value, ...row.ratings].flatMap((quantity) =>
    quantity ? [formatQuantity(quantity.kind, quantity.si)] : [],
  );
  const make = [row.package, row.mpn, row.supplier && `from ${row.supplier}`].filter((text) => text !== null);
  const lines: Child[][] = [
    [[...value, ...make].join(', ')],
    [row.substitution && `Instead: ${row.substitution}`],
    [row.note],
    joined(
      row.links.flatMap((link) =>
        isWebAddress(link.url) ? [element('a', { href: link.url }, linkNames[link.kind])] : [],
      ),
    ),
    row.usedIn.length > 0 ? ['for ', ...renderStepMarks(row.usedIn)] : [],
  ];
  return lines.filter((line) => line.some(Boolean)).map((line) => element('span', { class: 'detail' }, ...line));
}

const linkNames = { shop: 'where to buy', datasheet: 'data sheet', file: 'file', other: 'more' } as const;

function joined(children: readonly Child[]): Child[] {
  return children.flatMap((child, i) => (i === 0 ? [child] : [', ', child]));
}

/** Rows of one group stay together, in the order in which the groups first come. */
function groupsOf(rows: readonly PartRow[]): [string | null, PartRow[]][] {
  const groups = new Map<string | null, PartRow[]>();
  for (const row of rows) groups.set(row.group, [...(groups.get(row.group) ?? []), row]);
  return [...groups];
}
