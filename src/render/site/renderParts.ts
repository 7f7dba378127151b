import type { PartRow, PartsBlock } from '#guide/guide.ts';
import { isWebAddress } from '#guide/links.ts';
import { withStop } from '#guide/withStop.ts';
import { formatQuantity } from '#notation/value.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { classOfNames } from './classOfNames.ts';
import { formatAmount, formatMoney, formatRefs } from './formatAmount.ts';
import { renderBody } from './renderBody.ts';
import { gatherPage } from './renderGather.ts';
import type { Rendering } from './rendering.ts';
import { renderSection } from './renderSection.ts';
import { renderStepMarks } from './renderStepMarks.ts';

/** The bill of materials: few columns, so that it stays a table on a phone; the particulars in the row itself. */
export function renderParts(block: PartsBlock, rendering: Rendering): Html {
  return renderSection(
    { id: block.id, heading: 'Parts' },
    ...renderBody(block.body, 2, rendering),
    block.rows.length > 0 &&
      element(
        'p',
        {},
        'How each of them looks, and what to buy for several builds: ',
        element('a', { href: gatherPage }, 'gather the parts'),
        '.',
      ),
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
    columns.refs && element('th', { scope: 'row', class: classOfNames(row.refs) }, formatRefs(row.refs)),
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

/** One line of facts, and one of what to know about them. */
function renderParticulars(row: PartRow): Html[] {
  const quantities = [row.value, ...row.ratings].flatMap((quantity) =>
    quantity ? [formatQuantity(quantity.kind, quantity.si)] : [],
  );
  const facts: Child[] = [row.stated ?? null, ...quantities, row.package, row.mpn, ...sourcesOf(row)];
  const remarks: Child[] = [
    row.note && withStop(row.note),
    row.substitution && withStop(`Substitution: ${row.substitution}`),
    row.usedIn.length > 0 && ['For ', ...renderStepMarks(row.usedIn), '.'],
  ];
  return [joined(facts, ', '), joined(remarks, ' ')]
    .filter((line) => line.length > 0)
    .map((line) => element('span', { class: 'detail' }, ...line));
}

/** Where to buy it and read on; a shop's address stands behind the supplier's name. */
function sourcesOf(row: PartRow): Child[] {
  const links = row.links.filter((link) => isWebAddress(link.url));
  const shop = links.find((link) => link.kind === 'shop');
  const bought = row.supplier !== null && shop !== undefined;
  const supplier = bought ? element('a', { href: shop.url }, row.supplier) : row.supplier;
  const others = links.filter((link) => !bought || link !== shop);
  return [
    row.supplier !== null && ['from ', supplier],
    ...others.map((link) => element('a', { href: link.url }, linkNames[link.kind])),
  ];
}

const linkNames = { shop: 'where to buy', datasheet: 'data sheet', file: 'file', other: 'more' } as const;

function joined(children: readonly Child[], between: string): Child[] {
  const filled = children.filter((child) => child !== null && child !== false && child !== '');
  return filled.flatMap((child, i) => (i === 0 ? [child] : [between, child]));
}

/** Rows of one group stay together, in the order in which the groups first come. */
function groupsOf(rows: readonly PartRow[]): [string | null, PartRow[]][] {
  const groups = new Map<string | null, PartRow[]>();
  for (const row of rows) groups.set(row.group, [...(groups.get(row.group) ?? []), row]);
  return [...groups];
}
