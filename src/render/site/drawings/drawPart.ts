import { type Drawing, type PartForm, partForms } from '#guide/guide.ts';
import { listed } from '#guide/listed.ts';
import { type Child, element, type Html } from '../../shared/html.ts';
import bandColours from './bandColours.json';
import { forms } from './forms.ts';
import { ball, body, box, letters, line, mark, sheet, skin } from './strokes.ts';

/** The forms that these drawings share, drawn once: every drawing refers to them. Null where there are none. */
export function renderForms(drawings: readonly Drawing[]): Html | null {
  const used = partForms.filter((form) => drawings.some((drawing) => drawing.kind === 'form' && drawing.form === form));
  const banded = drawings.some(({ kind }) => kind === 'banded');
  if (used.length === 0 && !banded) return null;
  return element(
    'svg',
    { class: 'unseen', 'aria-hidden': 'true', width: 0, height: 0 },
    banded && element('g', { id: formId('banded') }, ...resistor),
    ...used.map((form) => element('g', { id: formId(form) }, ...forms[form].strokes)),
  );
}

/** A part as it lies on paper. Its words say the same to those who do not see it. */
export function drawPart(drawing: Drawing): Html {
  return element(
    'svg',
    {
      class: 'drawing',
      viewBox: `0 0 ${sheet.width} ${sheet.height}`,
      role: 'img',
      'aria-label': drawingWords(drawing),
    },
    ...strokesOf(drawing),
  );
}

/** What a drawing shows, in words. */
export function drawingWords(drawing: Drawing): string {
  switch (drawing.kind) {
    case 'banded':
      return `Drawing: a small barrel with bands, ${listed(drawing.bands.map((colour) => colour ?? 'one left open'))}`;
    case 'form': {
      const print = drawing.print.length === 0 ? '' : `, printed ${listed(drawing.print)}`;
      return `Drawing: ${forms[drawing.form].words}${print}`;
    }
    case 'dual':
      return `Drawing: a body with ${drawing.pins} ${drawing.feet}, half of them on each side, and a notch at one end`;
    case 'quad':
      return `Drawing: a square body with ${drawing.pins} contacts on four sides and a dot at one corner`;
    case 'strip':
      return `Drawing: ${drawing.rows === 1 ? 'a row' : 'two rows'} of ${drawing.columns} ${drawing.openings ? 'openings' : 'pins'}`;
    case 'terminals':
      return `Drawing: a block of ${drawing.positions} screw terminals`;
    case 'plate': {
      const size = drawing.size === null ? '' : `, ${drawing.size[0]} by ${drawing.size[1]} mm`;
      const pins =
        drawing.pins === null
          ? ''
          : ` with ${drawing.pins.rows === 1 ? 'a row' : 'two rows'} of ${drawing.pins.columns} pins`;
      return `Drawing: a board${drawing.holes ? ' full of holes' : ''}${pins}${size}`;
    }
    case 'ring':
      return `Drawing: a ring, ${drawing.outside} mm outside, ${drawing.inside} mm inside`;
  }
}

function strokesOf(drawing: Drawing): Child[] {
  switch (drawing.kind) {
    case 'banded':
      return [reference('banded'), ...drawBands(drawing.bands)];
    case 'form':
      return [reference(drawing.form), ...drawPrint(drawing.form, drawing.print)];
    case 'dual':
      return drawDual(drawing.pins, drawing.feet);
    case 'quad':
      return drawQuad(drawing.pins);
    case 'strip':
      return drawStrip(drawing);
    case 'terminals':
      return drawTerminals(drawing.positions);
    case 'plate':
      return drawPlate(drawing);
    case 'ring':
      return drawRing(drawing);
  }
}

function formId(form: PartForm | 'banded'): string {
  return `form-${form}`;
}

function reference(form: PartForm | 'banded'): Html {
  return element('use', { href: `#${formId(form)}` });
}

const resistor = [
  line('M8 36H152'),
  skin('M42 19h14q5 0 7 4h34q2-4 7-4h14q7 0 7 7v20q0 7-7 7h-14q-5 0-7-4h-34q-2 4-7 4h-14q-7 0-7-7v-20q0-7 7-7z'),
];

/** Where bands begin along the body, by how many there are; the last of four and more stands apart. */
const bandPlaces: Readonly<Record<number, readonly number[]>> = {
  1: [77],
  3: [44, 66, 78],
  4: [44, 66, 78, 109],
  5: [44, 65, 75, 85, 109],
  6: [41, 49, 66, 76, 86, 109],
};

function drawBands(bands: readonly (string | null)[]): Html[] {
  const places = bandPlaces[bands.length] ?? [];
  return bands.flatMap((colour, i) => {
    const x = places[i];
    if (x === undefined) return [];
    // The ends of the body are thicker than its middle.
    const [y, height] = x < 58 || x > 98 ? [19, 34] : [23, 26];
    const fill = colour === null ? undefined : (bandColours as Partial<Record<string, string>>)[colour];
    return [element('rect', { class: fill === undefined ? 'open-band' : 'band', x, y, width: 6, height, fill })];
  });
}

function drawPrint(form: PartForm, print: readonly string[]): Html[] {
  const at = forms[form].print;
  if (at === null) return [];
  const [x, y] = at;
  const step = 13;
  return print.map((text, i) => letters(x, y + (i - (print.length - 1) / 2) * step, text, 'print'));
}

function drawDual(pins: number, feet: 'pins' | 'leads' | 'openings'): Html[] {
  const side = pins / 2;
  const pitch = Math.min(9, 60 / side);
  const half = (side * pitch) / 2 + 2;
  const ys = Array.from({ length: side }, (_, i) => rounded(sheet.middle + (i - (side - 1) / 2) * pitch));
  const wide = Math.min(pitch * 0.5, 4);
  const [left, right] = [62, 98];
  const top = rounded(sheet.middle - half);
  const tall = rounded(2 * half);
  const notch = `M${left} ${top}h13a5 5 0 0 0 10 0h13v${tall}h-36z`;
  if (feet === 'openings') {
    return [
      body(notch),
      line(box(74, top + 6, 12, rounded(tall - 10))),
      ...ys.flatMap((y) => [
        mark(box(66, rounded(y - wide / 2), 4, rounded(wide))),
        mark(box(90, rounded(y - wide / 2), 4, rounded(wide))),
      ]),
    ];
  }
  const reach = feet === 'pins' ? 8 : 12;
  const legs = ys
    .map((y) => box(left - reach, rounded(y - wide / 2), 2 * reach + right - left, rounded(wide)))
    .join('');
  return [
    body(legs),
    body(notch),
    mark(ball(left + 6, (ys[0] ?? 0) + 1, 1.8)),
    letters(left - reach - 7, (ys[0] ?? 0) + 1, '1'),
  ];
}

function drawQuad(pins: number): Html[] {
  const side = pins / 4;
  const pitch = 44 / side;
  const places = Array.from({ length: side }, (_, i) => (i - (side - 1) / 2) * pitch);
  const across = places.map((at) => `M50 ${rounded(36 + at)}h60`).join('');
  const down = places.map((at) => `M${rounded(80 + at)} 6v60`).join('');
  return [line(across + down), body(box(56, 12, 48, 48)), mark(ball(62, 18, 2)), letters(44, 18, '1')];
}

function drawStrip({ rows, columns, openings }: { rows: number; columns: number; openings: boolean }): Html[] {
  const pitch = Math.min(12, 144 / columns);
  const [width, tall] = [pitch * columns, pitch * rows];
  const [x, y] = [(sheet.width - width) / 2, (sheet.height - tall) / 2];
  const dot = Math.min(5, pitch * 0.5);
  const dots = Array.from({ length: rows * columns }, (_, i) => {
    const at = [x + ((i % columns) + 0.5) * pitch - dot / 2, y + (Math.floor(i / columns) + 0.5) * pitch - dot / 2];
    return box(rounded(at[0] ?? 0), rounded(at[1] ?? 0), rounded(dot), rounded(dot));
  }).join('');
  return [body(box(rounded(x), rounded(y), rounded(width), rounded(tall))), openings ? mark(dots) : body(dots)];
}

function drawTerminals(positions: number): Html[] {
  const pitch = Math.min(24, 140 / positions);
  const x = (sheet.width - pitch * positions) / 2;
  const radius = rounded(pitch * 0.28);
  return Array.from({ length: positions }, (_, i) => {
    const left = rounded(x + i * pitch);
    const middle = rounded(left + pitch / 2);
    return [
      body(box(left, 12, rounded(pitch), 46)),
      line(`${ball(middle, 26, radius)}M${rounded(middle - radius)} 26h${rounded(2 * radius)}`),
      line(box(rounded(middle - radius), 42, rounded(2 * radius), 10)),
    ];
  }).flat();
}

function drawPlate({ size, pins, holes }: Extract<Drawing, { kind: 'plate' }>): Child[] {
  const [wide, tall] = size ?? [100, 44];
  // Longer side across, as one lays it down.
  const ratio = Math.min(wide, tall) / Math.max(wide, tall);
  const room = size === null ? 60 : 54;
  const width = rounded(Math.min(124, room / ratio));
  const height = rounded(width * ratio);
  const x = rounded((sheet.width - width) / 2);
  const y = rounded((room - height) / 2 + (size === null ? 6 : 2));
  const rows = pins === null ? [] : pins.rows === 1 ? [y + height - 5] : [y + 5, y + height - 5];
  const pitch = pins === null ? 0 : (width - 8) / pins.columns;
  return [
    body(box(x, y, width, height)),
    holes &&
      element('path', {
        class: 'holes',
        d: Array.from(
          { length: Math.floor((height - 4) / 6) },
          (_, i) => `M${x + 5} ${rounded(y + 5 + i * 6)}h${width - 10}`,
        ).join(''),
      }),
    ...rows.map((row) =>
      mark(
        Array.from({ length: pins?.columns ?? 0 }, (_, i) =>
          box(rounded(x + 4 + (i + 0.5) * pitch - 1.2), rounded(row - 1.2), 2.4, 2.4),
        ).join(''),
      ),
    ),
    size !== null && letters(sheet.width / 2, 65, `${Math.max(wide, tall)} × ${Math.min(wide, tall)} mm`),
  ];
}

function drawRing({ outside, inside }: { outside: number; inside: number }): Html[] {
  return [
    body(ball(80, 36, 33)),
    body(ball(80, 36, rounded((33 * inside) / outside))),
    letters(136, 62, `${outside} mm`),
  ];
}

function rounded(n: number): number {
  return Math.round(n * 10) / 10;
}
