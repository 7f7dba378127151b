import type { Endpoint } from '#core/connection.ts';
import type { TextPlace } from '#core/place.ts';
import type { Quantity } from '#core/quantity.ts';
import type {
  BodyBlock,
  CautionBlock,
  ErratumBlock,
  Guide,
  MissingPictureBlock,
  Needs,
  PartRow,
  PictureBlock,
  StepBlock,
  StepMark,
  Words,
} from '#guide/guide.ts';

/**
 * An invented build: a soil sensor that whispers when the tomatoes are thirsty. Its guide holds every kind of
 * block at least once.
 */
export function greenhouseWhisper(): Guide {
  const steps = sevenSteps();
  return {
    format: 2,
    summary: null,
    site: null,
    reports: null,
    language: 'en',
    title: 'The greenhouse whisper',
    blocks: [
      {
        kind: 'cover',
        id: 'cover-picture',
        places: [],
        picture: picture(
          'photos/whisper.jpg',
          4000,
          2500,
          'The finished whisper stands in a pot of tomatoes, its window glowing amber',
        ),
      },
      {
        kind: 'summary',
        id: 'summary',
        places: [],
        totals: { minutes: { hands: 145, wait: 1440 }, cost: null },
        sentences: [
          {
            about: 'purpose',
            words: text(
              'A stake for the greenhouse bed that listens to the soil and says, in a low voice, when the tomatoes are thirsty.',
            ),
          },
          {
            about: 'skills',
            words: text(
              'It asks for these skills: soldering through-hole parts, crimping ferrules and loading a sketch.',
            ),
          },
          {
            about: 'time',
            words: [
              ...text('It takes about '),
              { kind: 'strong', children: text('2 h 25 min') },
              ...text(' of work and '),
              { kind: 'strong', children: text('24 h') },
              ...text(' of waiting.'),
            ],
          },
          {
            about: 'cost',
            words: [
              ...text('The parts cost about '),
              { kind: 'strong', children: text('31.40 EUR') },
              ...text(
                ' by the 9 of 10 parts that have a price, last looked up 2025-11-02; carriage, tools and full packs are not counted.',
              ),
            ],
          },
          { about: 'supply', words: text('It runs from three AA cells.') },
          { about: 'status', words: text('It has been built 3 times.') },
        ],
      },
      {
        kind: 'notices',
        id: 'notices',
        places: [],
        halts: [{ message: 'Step 6 loads a sketch that nobody has written', steps: [mark(6)] }],
        errata: [erratum],
      },
      {
        kind: 'section',
        id: 'section-opening',
        places: [],
        heading: null,
        level: 2,
        folded: false,
        troubleshooting: false,
        body: [
          {
            kind: 'paragraph',
            id: 'section-opening.a',
            places: [],
            words: [
              ...text(
                'Ordinary probes rust away within a season. This one has no bare metal: it feels the soil through a lacquered board, as a change of ',
              ),
              { kind: 'emphasis', children: text('capacitance') },
              ...text(', and ignores salt. The '),
              { kind: 'link', to: { kind: 'block', id: 'code-firmware/whisper.ino' }, children: text('sketch') },
              ...text(' is forty lines long. A '),
              {
                kind: 'link',
                to: { kind: 'web', url: 'https://example.org/soil?a=1&b=2' },
                children: text('table of soils'),
              },
              ...text(' helps with the first setting.'),
            ],
          },
        ],
      },
      {
        kind: 'cautionList',
        id: 'cautions',
        places: [],
        cautions: [
          {
            word: 'danger',
            message:
              'Never drive the stake where a buried mains cable may run: contact kills. Have the run of cables shown to you by whoever laid them.',
            steps: [],
          },
          {
            word: 'warning',
            message: 'A shorted cell can burst and burn. Fit the cells last, and never with the lid off.',
            steps: [mark(7)],
          },
          {
            word: 'caution',
            message:
              'The iron burns skin at a touch. Keep it in its stand when you let go, and solder where the fumes are drawn off.',
            steps: [mark(2)],
          },
          {
            word: 'notice',
            message: 'The ring of pixels dies of static charge. Touch the earthed mat before you lift it from its bag.',
            steps: [mark(3)],
          },
        ],
      },
      {
        kind: 'section',
        id: 'section-how-it-works',
        places: [],
        heading: 'How it works',
        level: 2,
        folded: false,
        troubleshooting: false,
        body: [
          {
            kind: 'paragraph',
            id: 'section-how-it-works.a',
            places: [],
            words: text(
              'Wet soil stores more charge than dry soil. An oscillator whose frequency falls with that charge is counted for one tenth of a second, and the count is compared with two numbers that you find in the last step.',
            ),
          },
          {
            kind: 'quote',
            id: 'section-how-it-works.b',
            places: [],
            body: [
              { kind: 'heading', id: 'section-how-it-works.c', places: [], words: text('From the bench book') },
              {
                kind: 'paragraph',
                id: 'section-how-it-works.d',
                places: [],
                words: text('The plant does not care about volts. It cares about Tuesday.'),
              },
            ],
          },
          {
            kind: 'table',
            id: 'section-how-it-works.e',
            places: [],
            align: [null, 'right', 'center'],
            header: [text('Soil'), text('Count'), text('Voice')],
            rows: [
              [text('Dust dry'), text('9120'), text('calls')],
              [text('Moist'), text('6480'), text('silent')],
              [text('Waterlogged'), text('4030'), text('grumbles')],
            ],
          },
          { kind: 'rule', id: 'section-how-it-works.f', places: [] },
          {
            kind: 'paragraph',
            id: 'section-how-it-works.g',
            places: [],
            words: [
              ...text('It was drawn by hand'),
              { kind: 'break' },
              { kind: 'deleted', children: text('once') },
              ...text(' '),
              { kind: 'strong', children: text('twice') },
              ...text(', as the '),
              { kind: 'link', to: { kind: 'unpublished', path: 'design/stake.svg' }, children: text('outline') },
              ...text(' shows.'),
            ],
          },
        ],
      },
      {
        kind: 'parts',
        id: 'parts',
        places: [],
        body: [
          {
            kind: 'paragraph',
            id: 'parts.a',
            places: [],
            words: text('Everything fits in one shoe box. Order one spare of the ring.'),
          },
        ],
        rows: parts(),
      },
      {
        kind: 'tools',
        id: 'tools',
        places: [],
        body: [],
        rows: [
          tool('soldering iron', true, 'with a chisel tip of 2 mm'),
          tool('multimeter', true, null),
          tool('side cutters', true, null),
          tool('wire stripper', true, null),
          tool('USB cable', true, 'one that carries data'),
          tool('fine brush', true, 'for the lacquer'),
          tool('third hand', false, null),
          tool('kitchen scale', false, 'to weigh water into the soil'),
        ],
      },
      {
        kind: 'wiring',
        id: 'wiring',
        places: [],
        rows: [
          wire('U1.5V', 'H1.5V', 'red', '12 cm', [3]),
          wire('U1.GND', 'H1.GND', 'black', '12 cm', [3]),
          wire('U1.D5', 'R1.1', 'green', '8 cm', [3]),
          wire('R1.2', 'H1.IN', 'green', null, [3]),
          wire('U1.A0', 'B1.SIG', 'white', '30 cm', [4, 6]),
          wire('U1.3V3', 'B1.VCC', 'red', '30 cm', [4]),
          wire('U1.GND', 'B1.GND', 'black', '30 cm', [4]),
          wire('BT1.+', 'U1.VIN', 'red', '6 cm', []),
        ],
      },
      {
        kind: 'work',
        id: 'work-steps',
        places: [],
        blocks: [
          ...steps.slice(0, 4),
          {
            kind: 'section',
            id: 'section-a-word-on-lacquer',
            places: [],
            heading: 'A word on lacquer',
            level: 3,
            folded: false,
            troubleshooting: false,
            body: [
              {
                kind: 'paragraph',
                id: 'section-a-word-on-lacquer.a',
                places: [],
                words: text(
                  'Two thin coats keep out more water than one thick one. Let the first dry until it no longer takes a fingerprint.',
                ),
              },
            ],
          },
          ...steps.slice(4),
        ],
      },
      {
        kind: 'troubles',
        id: 'troubles',
        places: [],
        rows: [
          {
            symptom: 'The whisper dies away after a minute',
            cause: 'one cell sat the wrong way round and was charged by the others',
            remedy: 'Turn the cell, and throw it away',
            reading: '2.1 V over three cells',
            step: mark(6),
          },
        ],
      },
      {
        kind: 'files',
        id: 'files',
        places: [],
        rows: [
          { path: 'design/stake.scad', purpose: 'design', bytes: 4321, withheld: null },
          { path: 'design/stake.3mf', purpose: 'design', bytes: 98765, withheld: 'it may name its maker' },
        ],
      },
      {
        kind: 'section',
        id: 'section-when-it-will-not-whisper',
        places: [],
        heading: 'When it will not whisper',
        level: 2,
        folded: false,
        troubleshooting: false,
        body: [
          {
            kind: 'list',
            id: 'section-when-it-will-not-whisper.a',
            places: [],
            ordered: false,
            start: 1,
            items: [
              {
                done: null,
                body: [
                  {
                    kind: 'paragraph',
                    id: 'section-when-it-will-not-whisper.b',
                    places: [],
                    words: text('No light at all: measure the cells under load, not open.'),
                  },
                ],
              },
              {
                done: null,
                body: [
                  {
                    kind: 'paragraph',
                    id: 'section-when-it-will-not-whisper.c',
                    places: [],
                    words: text('It calls day and night: the two numbers stand the wrong way round.'),
                  },
                ],
              },
            ],
          },
        ],
      },
      {
        kind: 'codeFile',
        id: 'code-firmware/whisper.ino',
        places: [{ kind: 'file', file: 'firmware/whisper.ino' }],
        path: 'firmware/whisper.ino',
        language: 'cpp',
        text: sketch,
        withheld: 2,
      },
      {
        kind: 'codeFile',
        id: 'code-firmware/voice.h',
        places: [{ kind: 'file', file: 'firmware/voice.h' }],
        path: 'firmware/voice.h',
        language: 'cpp',
        text: Array.from({ length: 64 }, (_, i) => `#define NOTE_${i} ${220 + i * 7}`).join('\n'),
        withheld: 0,
      },
      {
        kind: 'licences',
        id: 'licences',
        places: [],
        licences: [
          { covers: 'hardware', spdx: 'CERN-OHL-S-2.0' },
          { covers: 'code', spdx: 'Apache-2.0' },
          { covers: 'text', spdx: 'CC-BY-SA-4.0' },
        ],
      },
      { kind: 'credits', id: 'credits', places: [], authors: ['Maren Tolvik', 'Idris Quell'] },
      { kind: 'revision', id: 'revision', places: [], revision: 'C', asOf: '2025-11-09' },
    ],
  };
}

function sevenSteps(): StepBlock[] {
  return [
    step(1, 'Cut and tin the wires', {
      minutes: 15,
      needs: { parts: [need('W1', 'stranded wire, 0.22 mm²', 2, 'm')], tools: ['wire stripper', 'side cutters'] },
      body: [
        paragraph(
          1,
          'Cut the seven wires to the lengths in the wiring table and strip 4 mm from every end. Twist each end once, then tin it: the solder should follow the strands and stop at the insulation.',
        ),
        picture(
          'photos/wires.jpg',
          4000,
          3000,
          'Seven tinned wires lie side by side, sorted by colour and length',
          'Sorted now, they are not mixed up later',
        ),
      ],
      checks: [expect(1, 'seven wires, fourteen shining ends')],
    }),
    step(2, 'Solder the headers', {
      minutes: 20,
      needs: {
        parts: [need('U1', 'controller board with 3.3 V logic', 1), need('J1', 'pin header, 2.54 mm', 2)],
        tools: ['soldering iron'],
        power: 'off',
      },
      cautions: [
        caution(
          2,
          'caution',
          'The iron burns skin at a touch. Keep it in its stand when you let go, and solder where the fumes are drawn off.',
        ),
      ],
      irreversible: 'once the headers are in, the board no longer lies flat in the stake of revision A',
      body: [
        picture(
          'photos/headers.jpg',
          4000,
          3000,
          'The board sits on its headers in a breadboard, the first corner pin soldered',
        ),
        paragraph(
          2,
          'Seat the headers in a breadboard, long side down, and lay the board on top. Solder one corner pin, look along the edge, and press the board flat while you melt that joint once more. Then do the rest.',
        ),
        picture(
          'photos/bridge.png',
          900,
          700,
          'Drawing of two pins: a cone of solder on the left, a bridge between pins on the right',
          'Left, a joint as it should be; right, a bridge',
        ),
      ],
      checks: [measure(2, ['U1.5V', 'U1.GND'], '> 1 kΩ')],
    }),
    step(3, 'Wire the ring', {
      minutes: 30,
      needs: {
        parts: [need('H1', 'LED ring, 12 pixels', 1), need('R1', 'resistor', 1)],
        tools: ['soldering iron', 'third hand'],
        power: 'off',
      },
      cautions: [
        caution(
          3,
          'notice',
          'The ring of pixels dies of static charge. Touch the earthed mat before you lift it from its bag.',
        ),
      ],
      joins: [
        ['U1.5V', 'H1.5V', 'red, 12 cm'],
        ['U1.GND', 'H1.GND', 'black, 12 cm'],
        ['U1.D5', 'R1.1', 'green, 8 cm'],
        ['R1.2', 'H1.IN', null],
      ],
      body: [
        picture(
          'photos/ring.jpg',
          4000,
          3000,
          'R1 stands upright on the pad marked IN, the green wire leaves to the left',
          'The arrow printed on the ring points away from IN',
        ),
        paragraph(
          3,
          'Solder R1 upright to the pad marked IN. The arrow printed on the ring points away from it; a ring that is wired from the other end stays dark.',
        ),
        missing(3),
      ],
      checks: [measure(3, ['U1.5V', 'H1.5V'], '< 0.5 Ω'), measure(3, ['U1.5V', 'U1.GND'], '> 1 kΩ')],
      mistakes: [
        {
          kind: 'mistake',
          id: 'step-wire-the-ring.mistake',
          places: [],
          at: '2025-09-14',
          mistake: 'The ring stayed dark on the first evening',
          cause: 'the green wire sat on OUT',
          remedy: 'moved it to IN, nothing was damaged',
          reading: '0.0 V at IN, 3.3 V at OUT',
        },
      ],
      errata: [erratum],
      words: [{ term: 'pad', meaning: 'A bare copper place on a board that a wire or a lead is soldered to.' }],
    }),
    step(4, 'Join the probe', {
      minutes: 20,
      needs: { parts: [need('B1', 'lacquered probe board', 1)], tools: ['soldering iron'], power: 'off' },
      joins: [
        ['U1.A0', 'B1.SIG', 'white, 30 cm'],
        ['U1.3V3', 'B1.VCC', 'red, 30 cm'],
        ['U1.GND', 'B1.GND', 'black, 30 cm'],
      ],
      body: [
        paragraph(
          4,
          'Thread the three wires through the neck of the stake first: they do not pass once the board is on. Solder white to SIG, red to VCC and black to GND.',
        ),
      ],
      checks: [measure(4, ['B1.VCC', 'B1.GND'], '> 10 kΩ')],
    }),
    step(5, 'Lacquer the probe', {
      minutes: 10,
      wait: 1440,
      needs: { parts: [need(null, 'clear lacquer', 10, 'ml')], tools: ['fine brush'] },
      optional: 'Where the bed is never watered from above, one coat will do.',
      body: [
        {
          kind: 'list',
          id: 'step-5.list',
          places: [],
          ordered: true,
          start: 1,
          items: [
            { done: null, body: [paragraph(5, 'Wipe the board with alcohol.')] },
            { done: true, body: [paragraph(5, 'Brush on the first coat, edges too.', 'b')] },
            { done: false, body: [paragraph(5, 'Hang it up by the wires for a day.', 'c')] },
          ],
        },
      ],
      checks: [expect(5, 'no bare copper from the neck down')],
    }),
    step(6, 'Load the sketch and find your two numbers', {
      minutes: 35,
      needs: { parts: [], tools: ['USB cable', 'kitchen scale'], code: true, power: 'on' },
      side: 'the USB socket faces the window of the stake',
      body: [
        paragraph(
          6,
          'Write the name of your network where the sketch asks for it, load it, and open the monitor at 115200 baud.',
        ),
        {
          kind: 'listing',
          id: 'step-6.listing',
          places: [],
          language: 'text',
          text: 'whisper 1.2\ncount 9120  dry\ncount 4035  wet',
        },
        paragraph(
          6,
          'Push the probe into a pot of dry soil and note the count. Water it until drops fall from the pot, wait ten minutes, and note the second one.',
          'b',
        ),
      ],
      checks: [
        measure(6, ['U1.3V3', 'U1.GND'], '3.3 V ± 0.1 V'),
        expect(6, 'the ring breathes amber in dry soil and goes out in wet soil'),
        measure(6, ['H1.5V'], '4.5 V'),
        measure(6, [], '', 'the count settles within 20 of itself'),
      ],
    }),
    step(7, 'Close the stake', {
      minutes: 15,
      needs: {
        parts: [need('BT1', 'holder for three AA cells', 1), need(null, 'M3 × 8 screw', 4)],
        tools: [],
        power: 'off',
      },
      cautions: [
        caution(7, 'warning', 'A shorted cell can burst and burn. Fit the cells last, and never with the lid off.'),
      ],
      variant: 'the stake of revision C',
      makes: ['the whisper, closed and dry'],
      removes: ['the USB cable'],
      body: [
        picture('photos/portrait.jpg', 3000, 4000, 'The stake, closed, upright on the bench'),
        paragraph(
          7,
          'Lay the seal in its groove, close the lid and drive the four screws in crosswise, each only until the seal begins to show.',
        ),
      ],
      checks: [expect(7, 'a thin even line of seal all the way round')],
    }),
  ];
}

const erratum: ErratumBlock = {
  kind: 'erratum',
  id: 'errata.erratum-green',
  places: [],
  at: '2025-10-04',
  wrong: 'The green wire was given as 8 cm, which does not reach',
  right: 'Cut the green wire to 11 cm',
  editions: 'revisions A and B',
  by: 'a reader in the second greenhouse',
  step: { block: 'step-wire-the-ring', number: 3 },
};

interface StepSketch {
  readonly minutes: number;
  readonly wait?: number;
  readonly needs: {
    readonly parts: Needs['parts'];
    readonly tools: readonly string[];
    readonly code?: boolean;
    readonly power?: 'on' | 'off';
  };
  readonly cautions?: readonly CautionBlock[];
  readonly beforePower?: StepBlock['beforePower'];
  readonly irreversible?: string;
  readonly optional?: string;
  readonly variant?: string;
  readonly side?: string;
  readonly makes?: readonly string[];
  readonly removes?: readonly string[];
  readonly joins?: readonly (readonly [string, string, string | null])[];
  readonly body: readonly BodyBlock[];
  readonly checks: StepBlock['checks'];
  readonly mistakes?: StepBlock['mistakes'];
  readonly errata?: StepBlock['errata'];
  readonly words?: StepBlock['words'];
}

const stepIds = [
  'cut-and-tin-the-wires',
  'solder-the-headers',
  'wire-the-ring',
  'join-the-probe',
  'lacquer-the-probe',
  'load-the-sketch',
  'close-the-stake',
];
const handsBefore = [0, 15, 35, 65, 85, 95, 130];

function step(number: number, heading: string, sketch: StepSketch): StepBlock {
  const { needs } = sketch;
  return {
    kind: 'step',
    id: mark(number).block,
    places: [place(heading)],
    step: stepIds[number - 1] ?? '',
    number,
    heading,
    level: 3,
    needs: {
      parts: needs.parts,
      tools: needs.tools.map((name) => ({ name, row: `tool-${name.replaceAll(' ', '-')}` })),
      code: needs.code ? [{ path: 'firmware/whisper.ino', onto: 'U1', block: 'code-firmware/whisper.ino' }] : [],
      power: needs.power ? { during: needs.power, after: needs.power } : null,
    },
    minutes: { hands: sketch.minutes, wait: sketch.wait ?? 0 },
    after: { hands: handsBefore[number - 1] ?? 0, wait: number > 5 ? 1440 : 0 },
    powered: needs.power === 'on',
    side: sketch.side ?? null,
    optional: sketch.optional ?? null,
    variant: sketch.variant ?? null,
    irreversible: sketch.irreversible ?? null,
    makes: sketch.makes ?? [],
    removes: sketch.removes ?? [],
    joins: (sketch.joins ?? []).map(([from, to, colour]) => ({
      from: end(from),
      to: end(to),
      row: `wire-${from}~${to}`,
      colour,
      length: null,
    })),
    cautions: sketch.cautions ?? [],
    beforePower: sketch.beforePower ?? [],
    body: sketch.body,
    checks: sketch.checks,
    mistakes: sketch.mistakes ?? [],
    errata: sketch.errata ?? [],
    words: sketch.words ?? [],
  };
}

function parts(): PartRow[] {
  const bare: Omit<PartRow, 'id' | 'part' | 'description'> = {
    places: [],
    refs: [],
    amounts: [{ n: 1, unit: 'pcs', approximate: false }],
    value: null,
    ratings: [],
    package: null,
    mpn: null,
    supplier: null,
    links: [],
    price: null,
    substitution: null,
    note: null,
    fitted: true,
    group: null,
    usedIn: [],
  };
  const row = (part: string, description: string, more: Partial<PartRow>): PartRow => ({
    ...bare,
    id: `part-${part}`,
    part,
    description,
    refs: [part],
    ...more,
  });
  const euro = (amount: number, per = 1) => ({ amount, per, currency: 'EUR', date: '2025-11-02' });
  return [
    row('U1', 'Controller board with 3.3 V logic', {
      price: euro(6.8),
      group: 'Electronics',
      note: 'any board of the same pinout',
      supplier: 'Lintel Parts',
      links: [
        { kind: 'datasheet', url: 'https://example.org/u1.pdf' },
        { kind: 'shop', url: 'https://example.org/shop/u1' },
        { kind: 'file', url: 'design/u1.pdf' },
      ],
      usedIn: [mark(2), mark(6)],
    }),
    row('H1', 'LED ring, 12 pixels', {
      price: euro(7.5),
      group: 'Electronics',
      mpn: 'WS2812B',
      usedIn: [mark(3)],
      ratings: [quantity('voltage', 5, '5V')],
    }),
    row('R1', 'Resistor', {
      price: euro(1.2, 100),
      group: 'Electronics',
      value: quantity('resistance', 330, '330R'),
      ratings: [quantity('power', 0.25, '1/4W'), quantity('tolerance', 0.05, '5%')],
      package: 'axial',
      substitution: 'anything from 220 Ω to 470 Ω',
      usedIn: [mark(3)],
    }),
    row('B1', 'Lacquered probe board', { price: euro(3.9), group: 'Electronics', usedIn: [mark(4)] }),
    row('J1', 'Pin header, 2.54 mm', {
      refs: ['J1', 'J2'],
      amounts: [{ n: 2, unit: 'pcs', approximate: false }],
      price: euro(0.4),
      group: 'Electronics',
      usedIn: [mark(2)],
    }),
    row('C1', 'Capacitor', {
      value: quantity('capacitance', 1e-7, '100n'),
      fitted: false,
      group: 'Electronics',
      note: 'only on revision A',
    }),
    row('BT1', 'Holder for three AA cells', { price: euro(2.1), group: 'Stake', usedIn: [mark(7)] }),
    row('W1', 'Stranded wire, 0.22 mm²', {
      amounts: [{ n: 2, unit: 'm', approximate: true }],
      price: euro(1.6),
      group: 'Stake',
      usedIn: [mark(1)],
    }),
    row('m3-screw', 'M3 × 8 screw', {
      refs: [],
      amounts: [
        { n: 4, unit: 'pcs', approximate: false },
        { n: 6, unit: 'pcs', approximate: false },
      ],
      price: euro(0.1),
      group: 'Stake',
      usedIn: [mark(7)],
    }),
    row('lacquer', 'Clear lacquer', { refs: [], amounts: [], group: 'Stake', usedIn: [mark(5)] }),
  ];
}

function need(ref: string | null, named: string, n: number, unit = 'pcs'): Needs['parts'][number] {
  return {
    row: ref === null ? null : `part-${ref}`,
    refs: ref === null ? [] : ref === 'J1' ? ['J1', 'J2'] : [ref],
    amount: { n, unit, approximate: false },
    named,
    value: ref === 'R1' ? quantity('resistance', 330, '330R') : null,
  };
}

function tool(name: string, needed: boolean, note: string | null) {
  return {
    id: `tool-${name.replaceAll(' ', '-')}`,
    places: [],
    name,
    needed,
    link: name === 'multimeter' ? 'https://example.org/meters' : null,
    note,
  };
}

function wire(from: string, to: string, colour: string, length: string | null, steps: readonly number[]) {
  return {
    id: `wire-${from}~${to}`,
    places: [],
    from: end(from),
    to: end(to),
    net: from === 'U1.D5' ? 'DATA' : null,
    colour,
    gauge: '0.22 mm²',
    length,
    note: from === 'BT1.+' ? 'comes with the holder' : null,
    madeIn: steps.map(mark),
  };
}

function end(written: string): Endpoint {
  const [ref = '', pin = ''] = written.split('.');
  return { ref, pin };
}

function mark(number: number): StepMark {
  return { block: `step-${stepIds[number - 1]}`, number };
}

function text(value: string): Words[] {
  return [{ kind: 'text', value }];
}

function paragraph(number: number, value: string, part = 'a'): BodyBlock {
  return { kind: 'paragraph', id: `${mark(number).block}.${part}`, places: [place(value)], words: text(value) };
}

function picture(
  shot: string,
  width: number,
  height: number,
  alt: string,
  caption: string | null = null,
): PictureBlock {
  const widths = shot.includes('whisper') ? [480, 960, 1200, 1600] : [480, 960, 1600];
  const smaller = widths.filter((one) => one < width);
  return {
    kind: 'picture',
    id: `picture-${shot}`,
    places: [],
    shot,
    width,
    height,
    widths: smaller.length < widths.length ? [...smaller, width] : smaller,
    format: shot.endsWith('.png') ? 'png' : 'jpeg',
    alt,
    caption,
    callouts:
      shot === 'photos/ring.jpg'
        ? [
            { kind: 'ring', centre: { x: 0.5, y: 0.4 }, half: { x: 0.1, y: 0.1 }, words: 'the pad marked IN' },
            { kind: 'arrow', from: { x: 0.1, y: 0.1 }, to: { x: 0.3, y: 0.3 }, words: null },
            { kind: 'box', corner: { x: 0.1, y: 0.6 }, size: { x: 0.2, y: 0.2 }, words: 'the green wire' },
            { kind: 'label', at: { x: 0.7, y: 0.7 }, words: 'plus' },
            { kind: 'number', at: { x: 0.9, y: 0.9 }, words: 'the second hole' },
          ]
        : [],
  };
}

function missing(number: number): MissingPictureBlock {
  return {
    kind: 'missingPicture',
    id: `${mark(number).block}.missing`,
    places: [],
    wanted: 'photos/ring-back.jpg',
    alt: 'The back of the ring, four joints',
    caption: null,
    why: 'not-found',
  };
}

function caution(number: number, word: CautionBlock['word'], message: string): CautionBlock {
  return { kind: 'caution', id: `${mark(number).block}.caution`, places: [], word, message };
}

function expect(number: number, value: string): StepBlock['checks'][number] {
  return { kind: 'expect', id: `${mark(number).block}.expect`, places: [], text: value };
}

function measure(
  number: number,
  between: readonly string[],
  reading: string,
  words = `${between.join(' – ')} ${reading}`,
): StepBlock['checks'][number] {
  return {
    kind: 'measure',
    id: `${mark(number).block}.measure-${between.join('-')}`,
    places: [],
    between,
    expect: reading,
    text: words,
  };
}

function quantity(kind: Quantity['kind'], si: number, written: string): Quantity {
  return { kind, si, text: written };
}

function place(quote: string): TextPlace {
  return { kind: 'text', file: 'guide.md', span: [0, quote.length], line: 1, column: 1, quote };
}

const sketch = `#include <Arduino.h>

// Put your own network here.
const char* NETWORK = "your-network";
const char* PASSWORD = "your-password";

constexpr int RING_PIN = 5;
constexpr int PROBE_PIN = A0;
constexpr int DRY = 9120;
constexpr int WET = 4035;

void setup() {
  Serial.begin(115200);
  pinMode(RING_PIN, OUTPUT);
}

void loop() {
  const int count = analogRead(PROBE_PIN);
  if (count > DRY && count != WET) Serial.println("<thirsty> & waiting");
}
`;
