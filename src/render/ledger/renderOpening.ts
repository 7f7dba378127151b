import type { Verdict } from '#core/finding.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import type { Account } from './account.ts';

/** The name of the thing, what became of the builder, and how much of the build that stands on. */
export function renderOpening(account: Account): Html {
  return element(
    'header',
    { class: 'opening' },
    element('h1', {}, account.title),
    element('p', { class: 'purpose' }, `The rehearsal. ${verdictWords[account.verdict]}`),
    element('div', { class: 'promise' }, renderCoverage(account), renderStops(account)),
  );
}

const verdictWords: Readonly<Record<Verdict, string>> = {
  buildable: 'A first-time builder who does what the steps declare gets through.',
  halts: 'A first-time builder who does what the steps declare is stopped.',
  'not-enough-told': 'The steps declare too little for a first-time builder to be led through.',
};

function renderCoverage({ judged: { build, ledger, facts }, entries }: Account): Html {
  const { coverage, variants } = ledger;
  const shares = [
    share(coverage.parts, build.parts.filter(({ fitted }) => fitted).length, 'part'),
    share(coverage.connections, build.connections.length, 'connection'),
    share(coverage.tools, build.tools.filter(({ needed }) => needed).length, 'needed tool'),
  ].filter((one) => one.length > 0);
  const told = Object.values(facts.steps).filter(({ minutes }) => minutes !== null).length;
  return element(
    'p',
    {},
    ...(shares.length === 0
      ? ['Neither parts, connections nor tools are listed.']
      : ['The steps name ', ...joined(shares), '.']),
    ...(told === 0 ? [] : [' ', element('strong', {}, told), ` of ${entries.length} steps tell their time.`]),
    ...(variants.length === 0
      ? []
      : [
          ` Each variant was walked through on its own: ${variants.join(', ')}. A step for everyone is shown as the first of them meets it.`,
        ]),
  );
}

function share(value: number | null, of: number, noun: string): Child[] {
  if (value === null) return [];
  return [element('strong', {}, `${Math.round(value * of)} of ${of}`), ` ${noun}${of === 1 ? '' : 's'}`];
}

function joined(items: readonly Child[][]): Child[] {
  return items.flatMap((item, i) => [i === 0 ? '' : i === items.length - 1 ? ' and ' : ', ', ...item]);
}

function renderStops({ stops, entries, atEnd }: Account): Html | null {
  if (stops.length === 0) return element('p', {}, 'Nothing stops the builder.');
  const stopping = entries.filter((entry) => entry.stops.length > 0);
  const links: Child[][] = stopping.map(({ id, number }) => [element('a', { href: `#${id}` }, `step ${number}`)]);
  if (atEnd.length > 0) links.push([element('a', { href: '#end' }, 'the end')]);
  return element(
    'p',
    { class: 'stops' },
    element('strong', {}, stops.length),
    stops.length === 1 ? ' stop: at ' : ' stops: at ',
    ...joined(links),
    '.',
  );
}
