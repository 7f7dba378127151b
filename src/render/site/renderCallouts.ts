import type { Callout } from '#core/shotChoice.ts';
import type { PictureBlock } from '#guide/guide.ts';
import { type Child, element, type Html } from '../shared/html.ts';

/** Width of the drawing in its own units; its height follows the picture's. */
const width = 1000;

/** Radius of the disc that a number stands in. */
const disc = 26;

/**
 * The marks on a picture, drawn over it: each line light on dark, so that it shows on any ground and to any eye. A
 * mark with words has a number, which says what it is in the list under the picture.
 */
export function renderCallouts(picture: PictureBlock): Html | null {
  if (picture.callouts.length === 0 || picture.width === null || picture.height === null) return null;
  const height = Math.round((width * picture.height) / picture.width);
  const shapes = picture.callouts.map((callout) => shapeOf(callout, height));
  return element(
    'svg',
    {
      class: 'callouts',
      'aria-hidden': 'true',
      viewBox: `0 0 ${width} ${height}`,
      preserveAspectRatio: 'xMinYMin meet',
    },
    element('g', { class: 'callout-ground' }, ...shapes),
    element('g', { class: 'callout-line' }, ...shapes),
    ...numbered(picture).flatMap(({ callout, number }) => renderNumber(callout, number, height)),
    ...picture.callouts.flatMap((callout) => (callout.kind === 'label' ? renderLabel(callout, height) : [])),
  );
}

/** What the numbers on a picture stand for; a label says it on the picture already, so it is only for the ear. */
export function renderCalloutWords(picture: PictureBlock): Html | null {
  const told = numbered(picture);
  const labels = picture.callouts.flatMap((callout) => (callout.kind === 'label' ? (callout.words ?? []) : []));
  if (told.length === 0 && labels.length === 0) return null;
  return element(
    'div',
    { class: 'callout-words' },
    labels.length > 0 && element('p', { class: 'unseen' }, `Written on the picture: ${labels.join(', ')}.`),
    told.length > 0 && element('ol', {}, ...told.map(({ callout }) => element('li', {}, callout.words))),
  );
}

function numbered(picture: PictureBlock): { callout: Callout; number: number }[] {
  return picture.callouts
    .filter((callout) => callout.kind !== 'label' && callout.words !== null)
    .map((callout, i) => ({ callout, number: i + 1 }));
}

function shapeOf(callout: Callout, height: number): Child {
  switch (callout.kind) {
    case 'ring':
      return element('ellipse', {
        cx: round(callout.centre.x * width),
        cy: round(callout.centre.y * height),
        rx: round(callout.half.x * width),
        ry: round(callout.half.y * height),
      });
    case 'box':
      return element('rect', {
        x: round(callout.corner.x * width),
        y: round(callout.corner.y * height),
        width: round(callout.size.x * width),
        height: round(callout.size.y * height),
      });
    case 'arrow':
      return element('path', { d: arrowPath(callout, height) });
    case 'label':
    case 'number':
      return null;
  }
}

/** A shaft with two barbs at its head, each 30 units long and 30 degrees off. */
function arrowPath({ from, to }: Extract<Callout, { kind: 'arrow' }>, height: number): string {
  const [x1, y1, x2, y2] = [from.x * width, from.y * height, to.x * width, to.y * height];
  const angle = Math.atan2(y2 - y1, x2 - x1);
  const barbs = [-1, 1].map((side) => {
    const turned = angle + Math.PI + (side * Math.PI) / 6;
    return `M${round(x2)} ${round(y2)}L${round(x2 + 30 * Math.cos(turned))} ${round(y2 + 30 * Math.sin(turned))}`;
  });
  return [`M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`, ...barbs].join('');
}

function renderNumber(callout: Callout, number: number, height: number): Html[] {
  const at = anchorOf(callout, height);
  const x = Math.min(width - disc, Math.max(disc, at.x));
  const y = Math.min(height - disc, Math.max(disc, at.y));
  return [
    element('circle', { class: 'callout-disc', cx: round(x), cy: round(y), r: disc }),
    element('text', { class: 'callout-number', x: round(x), y: round(y) + 12 }, number),
  ];
}

/** Where the number stands: at the tail of an arrow, outside the lower right of a ring, at the corner of a box. */
function anchorOf(callout: Callout, height: number): { x: number; y: number } {
  switch (callout.kind) {
    case 'ring':
      return {
        x: (callout.centre.x + callout.half.x * Math.SQRT1_2) * width + disc * Math.SQRT1_2,
        y: (callout.centre.y + callout.half.y * Math.SQRT1_2) * height + disc * Math.SQRT1_2,
      };
    case 'box':
      return { x: callout.corner.x * width, y: callout.corner.y * height };
    case 'arrow':
      return { x: callout.from.x * width, y: callout.from.y * height };
    case 'label':
    case 'number':
      return { x: callout.at.x * width, y: callout.at.y * height };
  }
}

/** Written twice, dark and broad below, light above. */
function renderLabel(callout: Extract<Callout, { kind: 'label' | 'number' }>, height: number): Html[] {
  const at = { x: round(callout.at.x * width), y: round(callout.at.y * height) };
  return ['callout-label ground', 'callout-label'].map((name) =>
    element('text', { class: name, ...at }, callout.words),
  );
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
