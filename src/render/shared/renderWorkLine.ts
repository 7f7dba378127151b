import { element, type Html } from './html.ts';
import type { WorkLine, WorkSpan } from './workLine.ts';

/** Heights inside the drawing, in pixels from its top. */
const base = 30;
const height = 44;

/** The id of the drawing that every step refers to. */
const wholeLine = 'line-of-work';

/** The whole line, drawn once at full weight; each step's drawing refers to its strokes. */
export function renderWholeLine(line: WorkLine): Html {
  return element(
    'svg',
    { class: 'line', 'aria-hidden': 'true', width: '100%', height },
    element('g', { id: wholeLine }, ...strokes(line)),
    ...line.spans.filter((span) => isLabelled(span, line)).map(renderNumber),
    renderJunction(),
    renderTerminal(),
  );
}

/** The line as it stands at one step: what is done is heavy, a needle points at where the work is. */
export function renderLineAt(span: WorkSpan): Html {
  return element(
    'svg',
    { class: 'line', 'aria-hidden': 'true', width: '100%', height },
    element('use', { href: `#${wholeLine}` }),
    element('line', { class: 'line-done', x1: '0%', x2: percent(span.from), y1: base, y2: base }),
    element(
      'svg',
      { x: percent(span.from), y: 0, overflow: 'visible' },
      element('path', { class: 'line-needle', d: `M0 ${base}L-4.5 ${base - 17}H4.5Z` }),
    ),
    renderJunction(),
    renderTerminal(),
  );
}

function strokes(line: WorkLine): Html[] {
  return [
    element('line', { class: 'line-base', x1: '0%', x2: '100%', y1: base, y2: base }),
    ...line.spans.flatMap((span) => [
      span.powered &&
        element('line', {
          class: 'line-live',
          x1: percent(span.from),
          x2: percent(span.to),
          y1: base + 4,
          y2: base + 4,
        }),
      element('line', { class: 'line-tick', x1: percent(span.from), x2: percent(span.from), y1: base, y2: base + 8 }),
      span.waits &&
        element(
          'svg',
          { x: percent(span.to), y: base, overflow: 'visible' },
          element('path', { class: 'line-rest', d: 'M-8 6L-4 -6M-4 6L0 -6' }),
        ),
    ]),
  ].filter((stroke) => stroke !== false);
}

/** A line that branches off the rail to the head of a section. */
export function renderBranch(): Html {
  return element(
    'svg',
    { class: 'line', 'aria-hidden': 'true', width: '100%', height: 10 },
    element('line', { class: 'line-base', x1: '0%', x2: '100%', y1: 5, y2: 5 }),
    renderJunction(5),
    renderTerminal(5),
  );
}

/** A dot: where lines are joined, as in a circuit diagram. */
function renderJunction(y = base): Html {
  return element('circle', { class: 'line-junction', cx: '0%', cy: y, r: 3 });
}

/** An open circle: where a line ends, as at a terminal in a circuit diagram. */
function renderTerminal(y = base): Html {
  return element('circle', { class: 'line-terminal', cx: '100%', cy: y, r: 3.5 });
}

/** The first number stands beside the rail, not on it. */
function renderNumber(span: WorkSpan): Html {
  const place = span.from === 0 ? { 'text-anchor': 'start', dx: 6 } : { 'text-anchor': 'middle' };
  return element('text', { class: 'line-number', x: percent(span.from), y: base - 10, ...place }, span.number);
}

/** Numbers stand where they do not crowd: all of a few, every fifth of many. */
function isLabelled(span: WorkSpan, line: WorkLine): boolean {
  return line.spans.length <= 12 || span.number === 1 || span.number % 5 === 0;
}

function percent(fraction: number): string {
  return `${Number((fraction * 100).toFixed(2))}%`;
}
