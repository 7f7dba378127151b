import type { Build } from '#core/build.ts';
import type { Finding, Weight } from '#core/finding.ts';
import { lineAt } from '#core/lineAt.ts';
import type { Place } from '#core/place.ts';
import { element, type Html } from '../shared/html.ts';

const weightWords: Readonly<Record<Weight, string>> = {
  halts: 'Halts the builder',
  slows: 'Slows the builder',
  tidy: 'To tidy up',
};

/** A stop, pinned where it happens: what the witnesses say, what follows, and what to do. */
export function renderStop(stop: Finding, build: Build): Html {
  return element(
    'div',
    { class: `stop stop-${stop.weight}`, role: 'note' },
    element('p', { class: 'signal' }, element('strong', {}, weightWords[stop.weight])),
    element('p', {}, stop.message),
    ...stop.sides.map(({ place }) => renderWitness(place, build)),
    element('p', {}, stop.consequence),
    element('p', {}, element('strong', {}, 'To do: '), stop.remedy),
  );
}

function renderWitness(place: Place, build: Build): Html {
  if (place.kind !== 'text') return element('p', { class: 'witness' }, element('code', {}, place.file));
  return element(
    'blockquote',
    { class: 'witness' },
    element('p', {}, lineAt(build, place).trim()),
    element('p', { class: 'detail' }, `${place.file}, line ${place.line}`),
  );
}
