import type { Build } from '#core/build.ts';
import { unitOfPart } from '#rehearsal/amounts.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { renderCautions } from '../shared/renderCaution.ts';
import { renderLineAt } from '../shared/renderWorkLine.ts';
import type { Account, Entry } from './account.ts';
import { renderStop } from './renderStop.ts';

/** One step: when and how it begins, what stops the builder, and the account of what changes hands. */
export function renderEntry(entry: Entry, account: Account): Html {
  const span = account.line.spans.find(({ number }) => number === entry.number);
  return element(
    'section',
    { id: entry.id, class: 'step', 'aria-labelledby': `${entry.id}-heading` },
    span ? renderLineAt(span) : null,
    element(
      'h3',
      { id: `${entry.id}-heading` },
      element('span', { class: 'numeral' }, element('span', { class: 'unseen' }, 'Step '), entry.number),
      ' ',
      entry.heading,
    ),
    renderCircumstances(entry),
    element(
      'div',
      { class: 'content' },
      ...entry.stops.map((stop) => renderStop(stop, account.judged.build)),
      ...renderCautions(entry.change.warned),
      renderHands(entry, account.judged.build),
      renderWires(entry, account.judged.build),
      renderWords(entry),
    ),
  );
}

/** What stands beside the account: time, power, side, tools and code. */
function renderCircumstances(entry: Entry): Html {
  const { before, after, change } = entry;
  const power =
    before.powered === after.powered
      ? `Power ${after.powered ? 'on' : 'off'}`
      : `Power ${before.powered ? 'on' : 'off'}, then ${after.powered ? 'on' : 'off'}`;
  return element(
    'div',
    { class: 'needs' },
    element('p', {}, clockWords(entry)),
    element('p', {}, `${power}.`),
    after.side !== null && element('p', {}, `Side: ${after.side}.`),
    entry.variant !== null && element('p', {}, `Only for ${entry.variant}.`),
    entry.isOptional && element('p', {}, 'May be left out.'),
    entry.tools.length > 0 && labelled('On the table', entry.tools),
    change.loaded.length > 0 && labelled('Loaded', change.loaded),
  );
}

function clockWords({ begins, ends, minutes }: Entry): Child[] {
  if (begins === null || minutes === '') return [minutes === '' ? 'Tells no time.' : `Takes ${minutes}.`];
  return [
    begins === '0 min' ? 'Begins at once' : ['Begins after ', element('time', {}, begins)],
    ends === null ? '.' : [', ends after ', element('time', {}, ends), '.'],
  ];
}

function labelled(label: string, items: readonly string[]): Html {
  return element(
    'div',
    {},
    element('h4', { class: 'label' }, label),
    element('ul', {}, ...items.map((item) => element('li', {}, item))),
  );
}

/** Only what changes: parts out of the bag, and the counts of what has been made, heard and learned. */
function renderHands({ change, before, after }: Entry, build: Build): Html {
  const counts: [string, number, number][] = [
    ['Things made and connected', before.made.length, after.made.length],
    ['Cautions heard', before.warned.length, after.warned.length],
    ['Words explained', before.explained.length, after.explained.length],
  ];
  const rows = [
    ...change.parts.map((one) => {
      const part = build.parts.find(({ id }) => id === one.part);
      const unit = unitOfPart(part);
      return renderRow(nameOf(build, one.part), amount(one.before, unit), amount(one.after, unit));
    }),
    ...counts.filter(([, had, has]) => had !== has).map(([name, had, has]) => renderRow([name], `${had}`, `${has}`)),
  ];
  if (rows.length === 0) return element('p', { class: 'scale' }, 'Nothing changes hands.');
  return element(
    'table',
    { class: 'hands' },
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        element('th', { scope: 'col' }, 'In the builder’s hands'),
        element('th', { scope: 'col', class: 'number' }, 'before'),
        element('th', { scope: 'col', class: 'number' }, 'after'),
      ),
    ),
    element('tbody', {}, ...rows),
  );
}

function renderRow(name: Child[], had: string, has: string): Html {
  return element(
    'tr',
    {},
    element('th', { scope: 'row' }, ...name),
    element('td', { class: 'number' }, had),
    element('td', { class: 'number' }, has),
  );
}

function nameOf(build: Build, id: string): Child[] {
  const part = build.parts.find((one) => one.id === id);
  if (part === undefined || part.refs.length === 0) return [part?.description ?? id];
  return [
    element('span', { class: 'refs' }, part.refs.join(', ')),
    ' ',
    element('span', { class: 'detail' }, part.description),
  ];
}

function amount(n: number, unit: string): string {
  const figure = Number(n.toPrecision(6));
  return unit === 'pcs' || unit === '' ? `${figure}` : `${figure} ${unit}`;
}

/** New connections as lines between their ends, then sub-assemblies, then what is gone. */
function renderWires({ change }: Entry, build: Build): Html | null {
  if (change.made.length + change.gone.length === 0) return null;
  return element(
    'div',
    { class: 'joins' },
    change.made.length > 0 && element('h4', { class: 'label' }, 'Made in this step'),
    change.made.length > 0 && element('ul', {}, ...change.made.map((name) => renderMade(name, build))),
    change.gone.length > 0 && element('h4', { class: 'label' }, 'Taken away'),
    change.gone.length > 0 && element('ul', {}, ...change.gone.map((name) => renderMade(name, build))),
  );
}

function renderMade(name: string, build: Build): Html {
  const row = build.connections.find(({ id }) => id === name);
  const [from, to, ...more] = row ? [endOf(row.from), endOf(row.to)] : name.split('~');
  if (from === undefined || to === undefined || more.length > 0) return element('li', {}, name);
  return element(
    'li',
    {},
    element('span', { class: 'point' }, from),
    element('span', { class: 'wire from to' }),
    element('span', { class: 'unseen' }, ' to '),
    element('span', { class: 'point' }, to),
  );
}

function endOf({ ref, pin }: { readonly ref: string; readonly pin: string }): string {
  return pin === '' ? ref : `${ref}.${pin}`;
}

function renderWords({ change: { explained } }: Entry): Html | null {
  return explained.length === 0 ? null : element('p', {}, `Words explained: ${explained.join(', ')}.`);
}
