import type { PartForm } from '#guide/guide.ts';
import type { Html } from '../../shared/html.ts';
import { ball, body, box, gap, letters, line, mark } from './strokes.ts';

/** A form that parts of a class share, and where on it a print would stand. */
interface Form {
  /** What it is, for those who do not see the drawing. */
  readonly words: string;
  readonly strokes: readonly Html[];
  readonly print: readonly [x: number, y: number] | null;
}

const twoLeads = line('M14 29H72M14 43H72');

/** Forms as classes of parts have them, drawn by us from what the class has in common; none shows a maker's own part. */
export const forms: Readonly<Record<PartForm, Form>> = {
  disc: {
    words: 'a small rounded body with two leads',
    strokes: [twoLeads, body('M84 11h24q14 0 14 14v22q0 14-14 14h-24q-14 0-14-14v-22q0-14 14-14z')],
    print: [96, 36],
  },
  box: { words: 'a box with two leads', strokes: [twoLeads, body(box(66, 14, 68, 44))], print: [100, 36] },
  can: {
    words: 'a can with two leads, a stripe along the shorter one',
    strokes: [
      line('M8 26H64M26 46H64'),
      body('M62 14h82q3 0 3 3v38q0 3-3 3h-82q-4 0-4-4v-5q3-2 3-4v-18q0-2-3-4v-5q0-4 4-4z'),
      mark('M62 47h85v8q0 3-3 3h-82q-4 0-4-4v-5q3 0 4-2z'),
      gap('M74 53h9M96 53h9M118 53h9'),
      letters(14, 18, '+'),
      letters(32, 56, '−'),
    ],
    print: [106, 31],
  },
  bead: {
    words: 'a drop with two leads, a plus beside the longer one',
    strokes: [
      line('M8 28H70M26 44H70'),
      body('M66 24q6-10 28-10q26 0 26 22t-26 22q-22 0-28-10z'),
      letters(14, 22, '+'),
      letters(80, 30, '+'),
    ],
    print: [98, 38],
  },
  chip: {
    words: 'a flat chip with a metal cap at each end',
    strokes: [body(box(48, 20, 64, 32)), line('M60 20v32M100 20v32')],
    print: [80, 36],
  },
  'barred-chip': {
    words: 'a flat chip with a bar across one end',
    strokes: [body(box(48, 20, 64, 32)), mark(box(96, 20, 9, 32))],
    print: [74, 36],
  },
  block: {
    words: 'a block with a lead at each end',
    strokes: [line('M8 36H152'), body(box(34, 20, 92, 32))],
    print: [80, 36],
  },
  diode: {
    words: 'a small cylinder with a lead at each end and a band near one',
    strokes: [
      line('M8 36H152'),
      body('M52 23h56q4 0 4 4v18q0 4-4 4h-56q-4 0-4-4v-18q0-4 4-4z'),
      mark(box(95, 23, 8, 26)),
      letters(124, 28, 'K'),
    ],
    print: null,
  },
  led: {
    words: 'a dome on a rim with two leads, the rim flat at the shorter one',
    strokes: [
      line('M8 28H66M28 46H66'),
      body('M72 18h32a18 18 0 0 1 0 36h-32z'),
      body('M64 12h8v42h-8z'),
      letters(14, 22, '+'),
      letters(34, 60, '−'),
    ],
    print: null,
  },
  'led-four': {
    words: 'a dome on a rim with four leads, one longer than the others',
    strokes: [
      line('M26 20H66M8 31H66M26 42H66M26 53H66'),
      body('M72 18h32a18 18 0 0 1 0 36h-32z'),
      body('M64 12h8v45h-8z'),
    ],
    print: null,
  },
  'light-cell': {
    words: 'a round face with a winding track and two leads',
    strokes: [line('M8 29H72M8 43H72'), body(ball(94, 36, 26)), line('M78 28h28q4 0 4 4t-4 4h-24q-4 0-4 4t4 4h28')],
    print: null,
  },
  'to-92': {
    words: 'a body with a flat side and three legs, counted 1, 2, 3 from left to right',
    strokes: [
      line('M68 34v24M80 34v24M92 34v24'),
      body('M58 8h44v28h-44z'),
      letters(67, 64, '1'),
      letters(80, 64, '2'),
      letters(93, 64, '3'),
    ],
    print: null,
  },
  'to-220': {
    words: 'a body under a metal tab with a hole, and three legs, counted 1, 2, 3 from left to right',
    strokes: [
      line('M66 44v14M80 44v14M94 44v14'),
      body(box(56, 4, 48, 18)),
      line(ball(80, 13, 4.5)),
      body(box(56, 20, 48, 26)),
      letters(65, 65, '1'),
      letters(80, 65, '2'),
      letters(95, 65, '3'),
    ],
    print: null,
  },
  'sot-23': {
    words: 'a small flat body with one leg above and two below, counted 1 lower left, 2 lower right, 3 above',
    strokes: [
      body(box(75, 12, 10, 12)),
      body(box(59, 47, 10, 12)),
      body(box(91, 47, 10, 12)),
      body(box(52, 23, 56, 25)),
      letters(64, 66, '1'),
      letters(96, 66, '2'),
      letters(92, 15, '3'),
    ],
    print: null,
  },
  'sot-223': {
    words: 'a flat body with a broad tab above and three legs below, counted 1, 2, 3 from left to right',
    strokes: [
      body(box(64, 6, 32, 12)),
      body(box(54, 46, 8, 12)),
      body(box(76, 46, 8, 12)),
      body(box(98, 46, 8, 12)),
      body(box(48, 17, 64, 30)),
      letters(58, 65, '1'),
      letters(80, 65, '2'),
      letters(102, 65, '3'),
    ],
    print: null,
  },
  'axial-coil': {
    words: 'a small barrel with a lead at each end',
    strokes: [line('M8 36H152'), body('M50 24q30-8 60 0q6 12 0 24q-30 8-60 0q-6-12 0-24z')],
    print: null,
  },
  'ring-coil': {
    words: 'wire wound round a ring',
    strokes: [
      body(ball(88, 36, 28)),
      body(ball(88, 36, 12)),
      line(
        'M8 29H52l12-4M8 43H52l12 4M88 8v16M102 12l-8 14M112 22l-14 8M116 36h-16M112 50l-14-8M102 60l-8-14M88 64v-16M74 60l8-14M74 12l8 14',
      ),
    ],
    print: null,
  },
  'glass-fuse': {
    words: 'a glass tube with a metal cap at each end and a thin wire inside',
    strokes: [
      body(box(38, 24, 84, 24)),
      line('M62 36q18-6 36 0'),
      body(box(30, 22, 30, 28)),
      body(box(100, 22, 30, 28)),
    ],
    print: null,
  },
  'blade-fuse': {
    words: 'a flat plastic back with two metal blades',
    strokes: [body(box(56, 36, 14, 28)), body(box(90, 36, 14, 28)), body('M46 10h68v24q0 6-6 6h-56q-6 0-6-6z')],
    print: null,
  },
  crystal: {
    words: 'a flat metal can with two leads',
    strokes: [line('M14 29H68M14 43H68'), body(box(60, 12, 6, 48)), body('M66 15h60q14 0 14 21t-14 21h-60z')],
    print: [100, 36],
  },
  trimmer: {
    words: 'a small square body with a slotted screw and three pins',
    strokes: [line('M66 56v10M80 56v10M94 56v10'), body(box(56, 8, 48, 48)), line(`${ball(80, 32, 15)}M71 32h18`)],
    print: null,
  },
  dial: {
    words: 'a round body with a shaft to turn and three lugs',
    strokes: [line('M62 52v14M80 56v10M98 52v14'), body(ball(80, 32, 27)), line(ball(80, 32, 10)), line('M80 32v-10')],
    print: null,
  },
  tact: {
    words: 'a small square body with a round button and four legs',
    strokes: [line('M40 20h80M40 52h80'), body(box(54, 10, 52, 52)), line(ball(80, 36, 15))],
    print: null,
  },
  toggle: {
    words: 'a box with a threaded neck, a lever and three lugs',
    strokes: [
      line('M14 22H34M14 36H34M14 50H34'),
      body('M104 30l38-14q6 0 4 6l-40 18z'),
      body(box(78, 24, 28, 24)),
      body(box(34, 12, 44, 48)),
      line('M86 24v24M92 24v24M98 24v24'),
    ],
    print: null,
  },
  slide: {
    words: 'a flat metal body with a slider and three pins',
    strokes: [line('M64 52v14M80 52v14M96 52v14'), body(box(42, 22, 76, 30)), body(box(58, 12, 18, 12))],
    print: null,
  },
  encoder: {
    words: 'a square body with a round shaft, three lugs on one side and two on the other',
    strokes: [
      line('M64 58v10M80 58v10M96 58v10M70 4v10M90 4v10'),
      body(box(56, 12, 48, 48)),
      line(ball(80, 36, 15)),
      line('M72 24h16'),
    ],
    print: null,
  },
  'round-jack': {
    words: 'a round opening with a pin in its middle, in a threaded neck',
    strokes: [
      line('M96 24h40M96 48h40'),
      body('M80 6l26 15v30l-26 15-26-15v-30z'),
      body(ball(80, 36, 21)),
      line(ball(80, 36, 12)),
      mark(ball(80, 36, 3.5)),
    ],
    print: null,
  },
  'coin-cell': {
    words: 'a flat round cell, plus on its broad face',
    strokes: [body(ball(80, 36, 29)), line(ball(80, 36, 25)), letters(80, 36, '+', 'print')],
    print: null,
  },
  'round-cell': {
    words: 'a cylinder with a button at its plus end',
    strokes: [
      body(box(132, 29, 7, 14)),
      body('M24 18h104q4 0 4 4v28q0 4-4 4h-104q-4 0-4-4v-28q0-4 4-4z'),
      letters(122, 36, '+', 'print'),
      letters(30, 36, '−', 'print'),
    ],
    print: null,
  },
  'snap-battery': {
    words: 'a block with two snaps, the smaller one plus',
    strokes: [
      body(box(52, 20, 56, 46)),
      body(box(60, 11, 12, 9)),
      body('M86 9l4 11h10l4-11z'),
      letters(66, 32, '+'),
      letters(95, 32, '−'),
    ],
    print: null,
  },
  pouch: {
    words: 'a flat pouch with two wires',
    strokes: [
      line('M8 28H60M8 44H60'),
      body('M62 10h72q6 0 6 6v40q0 6-6 6h-72q-4 0-4-4v-44q0-4 4-4z'),
      line('M66 10v52'),
    ],
    print: null,
  },
  wire: {
    words: 'a wire with stripped ends',
    strokes: [line('M8 44H28M132 28H152'), body('M28 40h30q18 0 22-8t22-8h30v8h-30q-18 0-22 8t-22 8h-30z')],
    print: null,
  },
  tube: {
    words: 'a tube',
    strokes: [body('M30 22h96q7 0 7 14t-7 14h-96q-7 0-7-14t7-14z'), line('M126 22q-7 0-7 14t7 14')],
    print: null,
  },
  screw: {
    words: 'a screw',
    strokes: [
      body(box(62, 29, 80, 14)),
      line('M72 29l-5 14M82 29l-5 14M92 29l-5 14M102 29l-5 14M112 29l-5 14M122 29l-5 14M132 29l-5 14'),
      body('M62 16q-20 2-20 20t20 20z'),
    ],
    print: null,
  },
  nut: { words: 'a nut', strokes: [body('M66 12h28l14 24-14 24h-28l-14-24z'), line(ball(80, 36, 12))], print: null },
  pillar: {
    words: 'a pillar',
    strokes: [body(box(34, 22, 92, 28)), line('M34 31H126M34 41H126')],
    print: null,
  },
};
