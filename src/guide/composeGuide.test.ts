import { describe, expect, test } from 'vitest';
import { confirmed, declared } from '#core/claim.ts';
import { connectionId } from '#core/connection.ts';
import type { LogNote } from '#core/log.ts';
import type { Quantity } from '#core/quantity.ts';
import type { Hazard, Join, PartUse, StepFacts } from '#core/step.ts';
import {
  assembled,
  connection,
  end,
  link,
  paragraph,
  part,
  picture,
  place,
  read,
  type Sketch,
  section,
  shot,
  step,
} from '../../tests/site/smallBuild.ts';
import { composeGuide } from './composeGuide.ts';
import { everyBlock } from './everyBlock.ts';
import type { Guide, GuideBlock, StepBlock } from './guide.ts';

const code = [{ path: 'firmware/main.cpp', language: 'cpp', text: 'int main;', withheld: 1 }];

function compose(sketch: Sketch): Guide {
  return composeGuide(assembled(sketch), { code });
}

function blocksOf<Kind extends GuideBlock['kind']>(guide: Guide, kind: Kind): Extract<GuideBlock, { kind: Kind }>[] {
  return [...everyBlock(guide)].filter((block): block is Extract<GuideBlock, { kind: Kind }> => block.kind === kind);
}

function stepOf(sketch: Sketch, id: string): StepBlock | undefined {
  return blocksOf(compose(sketch), 'step').find((block) => block.step === id);
}

function use(ref: string | null, of: string | null, n = 1, named = ref ?? 'thing'): PartUse {
  return { named, part: of, ref, amount: { n, unit: 'pcs', approximate: false } };
}

function join(from: string, to: string, known: boolean): Join {
  const id = connectionId(end(from), end(to));
  return { from: end(from), to: end(to), id, connection: known ? id : null };
}

describe('names and numbers', () => {
  const first = compose({
    sections: [step('wire-it', paragraph('One.')), step('close-it', paragraph('Two.'), paragraph('Two.'))],
  });
  const later = compose({
    sections: [
      step('cut-it'),
      step('wire-it', paragraph('New.'), paragraph('One.')),
      step('close-it', paragraph('Two.'), paragraph('Two.')),
    ],
  });

  test('steps are numbered in the order of doing and named without their number', () => {
    expect(blocksOf(first, 'step').map(({ id, number }) => [id, number])).toEqual([
      ['step-wire-it', 1],
      ['step-close-it', 2],
    ]);
    expect(blocksOf(later, 'step').map(({ number }) => number)).toEqual([1, 2, 3]);
  });

  test('a block keeps its id when others are added around it, and no id is given twice', () => {
    const ids = (guide: Guide) => [...everyBlock(guide)].map(({ id }) => id);
    expect(ids(later)).toEqual(expect.arrayContaining(ids(first)));
    for (const guide of [first, later]) expect(new Set(ids(guide)).size).toBe(ids(guide).length);
  });

  test('a guide is the same after a trip through JSON, and composed twice', () => {
    const sketch: Sketch = {
      sections: [step('wire-it', paragraph('a ', link('#wire-it')))],
      build: { parts: [part('R1', 'Resistor')] },
    };
    expect(JSON.parse(JSON.stringify(compose(sketch)))).toEqual(compose(sketch));
  });

  test('every block of the maker’s text says where it comes from', () => {
    const [text] = blocksOf(first, 'paragraph');
    expect(text?.places).toEqual([expect.objectContaining({ file: 'guide.md' })]);
  });
});

describe('needs of a step', () => {
  test('give the value by which a part is told from its like', () => {
    const value = confirmed(declared<Quantity>({ kind: 'resistance', si: 330, text: '330R' }));
    const like: Sketch = {
      sections: [step('a')],
      build: { parts: [part('R1', 'Resistor', { value })] },
      facts: { a: { uses: [declared(use('R1', 'R1'))] } },
    };
    expect(stepOf(like, 'a')?.needs.parts[0]?.value?.si).toBe(330);
  });

  const sketch: Sketch = {
    sections: [step('wire-it')],
    build: {
      parts: [part('R1', 'Resistor, 330 Ω', { refs: ['R1', 'R2'] })],
      tools: [{ name: 'Iron', needed: true, link: null, note: null, place: place('Iron') }],
    },
    facts: {
      'wire-it': {
        uses: [
          declared(use('R1', 'R1')),
          declared(use(null, null, 4, 'M3 screw')),
          declared(use('R2', 'R1')),
          read(use('C1', null)),
        ],
        tools: [declared('iron'), declared('tongs'), read('saw')],
        loads: [
          declared({ path: 'firmware', onto: 'U1', exists: true }),
          declared({ path: 'lost.ino', onto: null, exists: false }),
        ],
      },
    },
  };
  const needs = stepOf(sketch, 'wire-it')?.needs;

  test('bring the uses of one part together and point at its row', () => {
    expect(needs?.parts).toEqual([
      {
        row: 'part-R1',
        refs: ['R1', 'R2'],
        amount: { n: 2, unit: 'pcs', approximate: false },
        named: 'Resistor, 330 Ω',
        value: null,
      },
      { row: null, refs: [], amount: { n: 4, unit: 'pcs', approximate: false }, named: 'M3 screw', value: null },
    ]);
  });

  test('name only what is declared, tools by the row that holds them', () => {
    expect(needs?.tools).toEqual([
      { name: 'iron', row: 'tool-Iron' },
      { name: 'tongs', row: null },
    ]);
  });

  test('find code by file or by folder', () => {
    expect(needs?.code.map(({ block }) => block)).toEqual(['code-firmware/main.cpp', null]);
  });
});

describe('power', () => {
  const power = { during: 'off', after: 'on' } as const;

  test('is as the step declares, whatever the rehearsal came with', () => {
    const sketch: Sketch = { sections: [step('a')], facts: { a: { power: declared(power) } }, powered: ['a'] };
    expect(stepOf(sketch, 'a')).toMatchObject({ powered: false, needs: { power } });
  });

  test('is as the rehearsal found it where the step says nothing', () => {
    const sketch: Sketch = { sections: [step('a'), step('b')], powered: ['b'] };
    expect(stepOf(sketch, 'a')?.powered).toBe(false);
    expect(stepOf(sketch, 'b')).toMatchObject({ powered: true, needs: { power: null } });
  });
});

describe('measurements', () => {
  const power = (during: 'on' | 'off', after: 'on' | 'off') => declared({ during, after });
  const reading = (expected: string) =>
    declared({ between: ['U1.5V', 'U1.GND'], expect: expected, text: `U1.5V – U1.GND ${expected}` });
  const measures = [reading('> 1 kΩ'), reading('no beep'), reading('4.9 V to 5.1 V')];
  const split = (facts: Partial<StepFacts>) => {
    const found = stepOf({ sections: [step('a')], facts: { a: { measures, ...facts } } }, 'a');
    return [found?.beforePower, found?.checks].map((blocks) =>
      blocks?.map((block) => (block.kind === 'measure' ? block.expect : block.text)),
    );
  };

  test('without power come first in a step that ends by switching it on', () => {
    expect(split({ power: power('off', 'on') })).toEqual([['> 1 kΩ', 'no beep'], ['4.9 V to 5.1 V']]);
  });

  test.each([null, power('off', 'off'), power('on', 'on'), power('on', 'off')])(
    'close a step that does not switch it on (%j)',
    (given) => expect(split({ power: given })).toEqual([[], ['> 1 kΩ', 'no beep', '4.9 V to 5.1 V']]),
  );
});

describe('tables', () => {
  const sketch: Sketch = {
    sections: [step('a'), step('b')],
    build: {
      parts: [part('R1', 'Resistor')],
      connections: [connection('U1.D5', 'R1.1', { colour: 'green' }), connection('U1.GND', 'J1.2')],
    },
    facts: {
      a: { uses: [declared(use('R1', 'R1'))] },
      b: {
        uses: [declared(use('R1', 'R1'))],
        connects: [declared(join('R1.1', 'U1.D5', true)), declared(join('U1.A', 'U1.B', false))],
      },
    },
  };
  const guide = compose(sketch);

  test('say which steps use a part and make a connection', () => {
    expect(blocksOf(guide, 'parts')[0]?.rows[0]?.usedIn.map(({ number }) => number)).toEqual([1, 2]);
    expect(blocksOf(guide, 'wiring')[0]?.rows.map(({ madeIn }) => madeIn.map(({ number }) => number))).toEqual([
      [2],
      [],
    ]);
  });

  test('give a step’s connections their colour, and a connection they lack no row', () => {
    const joins = blocksOf(guide, 'step')[1]?.joins;
    expect(joins?.map(({ row, colour }) => [row, colour])).toEqual([
      ['wire-R1.1~U1.D5', 'green'],
      [null, null],
    ]);
  });

  test('show both amounts where a parts list contradicts itself and none where it is silent', () => {
    const amount = (n: number) => declared({ n, unit: 'pcs', approximate: false });
    const parts = [
      part('R1', 'a', { amount: { is: 'contradicted', claims: [amount(2), amount(3), amount(2)] } }),
      part('R2', 'b', { amount: { is: 'unknown', lacking: 'a count' } }),
    ];
    const rows = blocksOf(compose({ build: { parts } }), 'parts')[0]?.rows;
    expect(rows?.map(({ amounts }) => amounts.map(({ n }) => n))).toEqual([[2, 3], []]);
  });

  test('do not repeat a value that the description says', () => {
    const value = confirmed(declared<Quantity>({ kind: 'resistance', si: 330, text: '330R' }));
    const rows = blocksOf(
      compose({ build: { parts: [part('R1', 'Resistor 330R', { value }), part('R2', 'Resistor', { value })] } }),
      'parts',
    )[0]?.rows;
    expect(rows?.map((row) => row.value?.si ?? null)).toEqual([null, 330]);
  });

  test('stand in for the list they were read from, and keep the words around it', () => {
    const list = { kind: 'list', ordered: false, start: 1, items: [], place: place('R1 Resistor', 100) } as const;
    const sections = [section('parts', 'parts', 2, paragraph('Order spares.'), list)];
    const from = (at: number) =>
      compose({ sections, build: { parts: [part('R1', 'Resistor', { place: place('R1', at) })] } });
    expect(blocksOf(from(102), 'parts')[0]?.body.map(({ kind }) => kind)).toEqual(['paragraph']);
    expect(blocksOf(from(300), 'parts')[0]?.body.map(({ kind }) => kind)).toEqual(['paragraph', 'list']);
  });
});

describe('cautions', () => {
  const quote = {
    kind: 'quote',
    blocks: [paragraph({ kind: 'strong', children: [{ kind: 'text', value: 'Warning:' }] }, ' It bites.')],
    place: place('q'),
  } as const;
  const hazards = [
    declared<Hazard>({ word: 'caution', message: 'Hot.' }),
    declared<Hazard>({ word: 'warning', message: 'it bites.' }),
  ] as const;
  const guide = compose({
    sections: [
      section('on-cells', 'prose', 2, { ...quote, blocks: [paragraph('Danger: It burns.')] }),
      step('a', paragraph('Do.'), quote),
      step('b'),
    ],
    facts: { a: { hazards }, b: { hazards: [declared<Hazard>({ word: 'caution', message: 'hot.' })] } },
  });

  test('stand before the text of their step, and not again where the text has them', () => {
    const [a] = blocksOf(guide, 'step');
    expect(a?.cautions.map(({ message }) => message)).toEqual(['Hot.']);
    expect(a?.body.map((block) => block.kind)).toEqual(['paragraph', 'caution']);
  });

  test('are gathered once each, the gravest first, with the steps they belong to', () => {
    const [list] = blocksOf(guide, 'cautionList');
    expect(list?.cautions).toEqual([
      { word: 'danger', message: 'It burns.', steps: [] },
      { word: 'warning', message: 'It bites.', steps: [{ block: 'step-a', number: 1 }] },
      {
        word: 'caution',
        message: 'Hot.',
        steps: [
          { block: 'step-a', number: 1 },
          { block: 'step-b', number: 2 },
        ],
      },
    ]);
  });

  test('are not claimed to be none where there are none', () => {
    expect(blocksOf(compose({ sections: [step('a')] }), 'cautionList')).toEqual([]);
  });

  test('are heard from the facts of a section that is no step', () => {
    const fact = (label: 'danger' | 'parts', value: string) => ({ label, value, place: place(value) });
    const plain = { ...section('before', 'prose', 2), facts: [fact('danger', 'It burns.'), fact('parts', 'R1')] };
    const guideOfPlain = compose({ sections: [plain] });
    expect(blocksOf(guideOfPlain, 'cautionList')[0]?.cautions[0]?.message).toBe('It burns.');
    expect(JSON.stringify(blocksOf(guideOfPlain, 'paragraph'))).toContain('"Parts: "');
  });
});

describe('the log', () => {
  const note = (about: string | null, mistake: string | null): LogNote => ({
    at: '2025-09-14',
    text: '',
    mistake,
    cause: null,
    remedy: 'cut it',
    reading: null,
    step: about,
    file: 'log.md',
    place: place('note'),
  });

  test('puts a mistake at the step it names by heading, id or number, and nowhere else', () => {
    const log = [
      note('Close it', 'by heading'),
      note('late-close-it', 'by id'),
      note('2', 'by number'),
      note('open it', 'elsewhere'),
      note(null, 'nowhere'),
      note('2', null),
    ];
    const guide = compose({
      sections: [step('wire-it'), { ...step('late-close-it'), heading: 'Close it' }],
      build: { log },
    });
    expect(blocksOf(guide, 'step').map(({ mistakes }) => mistakes.map(({ mistake }) => mistake))).toEqual([
      [],
      ['by heading', 'by id', 'by number'],
    ]);
  });
});

describe('the opening', () => {
  const title = section(
    'whisper',
    'title',
    1,
    paragraph('It listens.'),
    paragraph(picture('a.jpg', { alt: 'the whisper' })),
    paragraph('It whispers.'),
  );
  const shots = [shot('a.jpg', 4000), shot('b.png', 900, 'png')];

  test('takes purpose and cover from under the title and does not say them twice', () => {
    const guide = compose({ sections: [title], build: { shots } });
    expect(blocksOf(guide, 'summary')[0]?.sentences[0]).toEqual({
      about: 'purpose',
      words: [{ kind: 'text', value: 'It listens.' }],
    });
    expect(blocksOf(guide, 'cover')[0]?.picture).toMatchObject({
      shot: 'a.jpg',
      alt: 'the whisper',
      widths: [480, 960, 1200, 1600],
    });
    expect(blocksOf(guide, 'picture')).toHaveLength(1);
    expect(blocksOf(guide, 'paragraph')).toHaveLength(1);
  });

  test('lets the settings speak first', () => {
    const guide = compose({
      sections: [title],
      settings: { title: 'Hush', summary: 'Quiet.', cover: 'b.png' },
      build: { shots },
    });
    expect(guide.title).toBe('Hush');
    expect(blocksOf(guide, 'summary')[0]?.sentences[0]?.words).toEqual([{ kind: 'text', value: 'Quiet.' }]);
    expect(blocksOf(guide, 'cover')[0]?.picture).toMatchObject({
      shot: 'b.png',
      format: 'png',
      widths: [480, 900],
      alt: 'Picture of Hush',
    });
    expect(blocksOf(guide, 'paragraph')).toHaveLength(2);
  });

  test('says once that a cover is missing, with what it was to show', () => {
    const gone = section(
      'whisper',
      'title',
      1,
      paragraph('It listens.'),
      paragraph(picture('lost.jpg', { alt: 'the whisper', exists: false })),
    );
    const guide = compose({ sections: [gone], settings: { cover: 'lost.jpg' } });
    expect(blocksOf(guide, 'missingPicture')).toEqual([
      expect.objectContaining({ wanted: 'lost.jpg', alt: 'the whisper', why: 'not-found' }),
    ]);
  });

  test('says so when the cover is not there', () => {
    const guide = compose({ settings: { cover: 'lost.jpg' } });
    expect(blocksOf(guide, 'cover')[0]?.picture).toMatchObject({
      kind: 'missingPicture',
      wanted: 'lost.jpg',
      why: 'not-found',
    });
  });
});

describe('the end', () => {
  test('carries code with its credentials counted, authors and the revision', () => {
    const guide = compose({ settings: { authors: ['Maren Tolvik'], revision: 'C' } });
    expect(blocksOf(guide, 'codeFile')[0]).toMatchObject({ path: 'firmware/main.cpp', withheld: 1 });
    expect(blocksOf(guide, 'credits')[0]?.authors).toEqual(['Maren Tolvik']);
    expect(blocksOf(guide, 'revision')[0]).toMatchObject({ revision: 'C', asOf: '2025-11-09' });
  });

  test('names the licences that the settings give, else those of licence files, else none', () => {
    const licences = [
      { path: 'LICENSE', spdx: 'MIT' },
      { path: 'docs/LICENSE', spdx: 'MIT' },
      { path: 'COPYING', spdx: null },
    ];
    const of = (sketch: Sketch) => blocksOf(compose(sketch), 'licences')[0]?.licences;
    const settings = { licences: { hardware: 'CERN-OHL-S-2.0', code: null, text: null } };
    expect(of({ settings, build: { licences } })).toEqual([{ covers: 'hardware', spdx: 'CERN-OHL-S-2.0' }]);
    expect(of({ build: { licences } })).toEqual([{ covers: 'folder', spdx: 'MIT' }]);
    expect(of({})).toEqual([]);
  });
});
