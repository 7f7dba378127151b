import { describe, expect, it } from 'vitest';
import type { StepFacts } from '#core/step.ts';
import { type MadeUp, madeUpBuild } from './madeUpBuild.ts';
import { readFacts } from './readFacts.ts';

const parts = [
  'R1: resistor',
  'R2, R3: resistor',
  'U1: ESP32 module',
  'W1: red wire 2 m',
  'screws: M3 screw, pan head',
  'M2, M4: motor',
  'lid: printed lid',
  'spring: steel spring',
  'spring-2: brass spring',
];

function read(facts: string, made: MadeUp = {}) {
  return readFacts(madeUpBuild({ parts, ...made, guide: `## Fit it\n${facts}\n` }));
}

function step(facts: string, made: MadeUp = {}): StepFacts {
  const found = read(facts, made).steps['fit-it'];
  if (found === undefined) throw new Error('no step');
  return found;
}

const placed = (claim: { places: readonly unknown[] } | null | undefined) => claim?.places[0];

describe('readFacts, Parts', () => {
  const uses = (value: string) =>
    step(`- Parts: ${value}`).uses.map(({ value: { named, part, ref, amount } }) => [
      named,
      part,
      ref,
      amount.n,
      amount.unit,
    ]);

  it('takes one use for each reference of a range or list', () => {
    expect(uses('R1–R3')).toEqual([
      ['R1', 'R1', 'R1', 1, 'pcs'],
      ['R2', 'R2', 'R2', 1, 'pcs'],
      ['R3', 'R2', 'R3', 1, 'pcs'],
    ]);
  });

  it('reads counts of described parts and lengths of wire', () => {
    expect(uses('M3 screw × 4, W1 30 cm')).toEqual([
      ['M3 screw × 4', 'screws', null, 4, 'pcs'],
      ['W1 30 cm', 'W1', 'W1', 30, 'cm'],
    ]);
  });

  it('reads a length of whatever is listed by length', () => {
    const [use] = step('- Parts: HS1 5 cm', { parts: ['HS1: tube 1 m'] }).uses;
    expect(use?.value).toMatchObject({ part: 'HS1', ref: 'HS1', amount: { n: 5, unit: 'cm' } });
  });

  it('reads the length of a described part that is listed by length, and leaves sizes alone', () => {
    const long = { parts: ['wire: hook-up wire, 26 AWG 2 m', 'spacer: nylon spacer'] };
    const [cut] = step('- Parts: hook-up wire 90 cm', long).uses;
    expect(cut?.value).toMatchObject({ part: 'wire', ref: null, amount: { n: 90, unit: 'cm' } });
    const [sized] = step('- Parts: nylon spacer 10 mm', long).uses;
    expect(sized?.value).toMatchObject({ part: null, amount: { n: 1, unit: 'pcs' } });
  });

  it('finds a part by id or by a description that fits no other, and says null where two fit or none', () => {
    expect(uses('lid, steel spring, spring-2, washer').map(([, part]) => part)).toEqual([
      'lid',
      'spring',
      'spring-2',
      null,
    ]);
    expect(uses('R9').map(([, part, ref]) => [part, ref])).toEqual([[null, 'R9']]);
    expect(step('- Parts: coil', { parts: ['a: steel coil', 'b: brass coil'] }).uses[0]?.value.part).toBeNull();
  });

  it('places each use inside its line, without the markup round it', () => {
    const claims = step('- Parts: R1, **R2**, `W1 30 cm`').uses;
    expect(claims.map(placed)).toMatchObject([
      { line: 2, column: 10, quote: 'R1' },
      { line: 2, column: 16, quote: 'R2' },
      { line: 2, column: 23, quote: 'W1 30 cm' },
    ]);
    expect(claims.every(({ basis }) => basis === 'declared')).toBe(true);
  });
});

describe('readFacts, Tools and Makes', () => {
  it('names a tool as the list does, whatever its case and number', () => {
    const { tools } = step('- Tools: Soldering irons, third hand', { tools: ['soldering iron'] });
    expect(tools.map(({ value }) => value)).toEqual(['soldering iron', 'third hand']);
  });

  it('takes each thing made', () => {
    expect(step('- Makes: wired board, lid').makes.map(({ value }) => value)).toEqual(['wired board', 'lid']);
  });
});

describe('readFacts, Connects and Removes', () => {
  const wiring = ['U1.D5 R1.1', 'U1.GND R1.2'];

  it('reads pairs of pins and finds their rows, whichever end is first', () => {
    const { connects } = step('- Connects: R1.1 – U1.D5, U1.5V -> R2.1', { wiring });
    expect(connects.map(({ value: { id, connection } }) => [id, connection])).toEqual([
      ['R1.1~U1.D5', 'R1.1~U1.D5'],
      ['R2.1~U1.5V', null],
    ]);
    expect(placed(connects[1])).toMatchObject({ line: 2, column: 27, quote: 'U1.5V -> R2.1' });
  });

  it('says at its place which item is no connection, and why', () => {
    const { problems, steps } = read('- Connects: U1.D5 – R1.1, U1.D6 R1.2, X7.1 – R1.2', { wiring });
    expect(steps['fit-it']?.connects).toHaveLength(1);
    expect(problems.map(({ place }) => place)).toMatchObject([
      { line: 2, column: 27, quote: 'U1.D6 R1.2' },
      { line: 2, column: 39, quote: 'X7.1 – R1.2' },
    ]);
    expect(problems[1]?.message).toContain('X7');
  });

  it('takes away joins and parts', () => {
    const { removes } = step('- Removes: U1.D5 – R1.1, R2', { wiring });
    expect(removes.map(({ value }) => ('id' in value ? value.id : value.part))).toEqual(['R1.1~U1.D5', 'R2']);
  });
});

describe('readFacts, Code', () => {
  const files = ['firmware/main.cpp', 'firmware/pins.h', 'other/blink.py'];
  const loads = (value: string) => step(`- Code: ${value}`, { files }).loads.map(({ value: load }) => load);

  it('finds files and folders, with or without a board', () => {
    expect(loads('firmware/main.cpp → U1')).toEqual([{ path: 'firmware/main.cpp', onto: 'U1', exists: true }]);
    expect(loads('`./firmware/` -> U1; other/blink.py')).toEqual([
      { path: 'firmware', onto: 'U1', exists: true },
      { path: 'other/blink.py', onto: null, exists: true },
    ]);
    expect(loads('[the code](firmware/main.cpp) → ESP32 module')).toEqual([
      { path: 'firmware/main.cpp', onto: 'U1', exists: true },
    ]);
  });

  it('does not take another case for the same file', () => {
    expect(loads('Firmware/main.cpp → U1')).toEqual([{ path: 'Firmware/main.cpp', onto: 'U1', exists: false }]);
  });

  it('says where no code or no board is named', () => {
    const { problems } = read('- Code: https://a.example/x → U1, firmware/main.cpp → U9', { files });
    expect(problems.map(({ place }) => (place.kind === 'text' ? place.quote : ''))).toEqual([
      'https://a.example/x → U1',
      'firmware/main.cpp → U9',
    ]);
  });
});

describe('readFacts, Power and Time', () => {
  it.each([
    ['off', 'off', 'off'],
    ['On', 'on', 'on'],
    ['off → on', 'off', 'on'],
    ['on, then off', 'on', 'off'],
    ['aus', 'off', 'off'],
  ])('reads power %s', (value, during, after) => {
    expect(step(`- Power: ${value}`).power?.value).toEqual({ during, after });
  });

  it.each([
    ['15 min', 15, 0],
    ['1 h 20 min', 80, 0],
    ['1.5 h', 90, 0],
    ['1:30 h', 90, 0],
    ['10 min + 2 h wait', 10, 120],
    ['hands on 15 min, wait 2 h', 15, 120],
    ['20–30 min', 30, 0],
    ['90 s', 1.5, 0],
    ['5 minutes and 1 day drying', 5, 1440],
    ['10 Minuten + 1 Stunde Wartezeit', 10, 60],
    ['half an hour', 30, 0],
    ['an hour and a half and two hours wait', 90, 120],
    ['1 h and 10 min wait', 60, 10],
    ['1h20', 80, 0],
  ])('reads time %s', (value, hands, wait) => {
    expect(step(`- Time: ${value}`).minutes?.value).toEqual({ hands, wait });
  });

  it('says what it expected where it cannot read one', () => {
    const { problems, steps } = read('- Power: maybe\n- Time: an evening\n- Time: 3 m³');
    expect(steps['fit-it']).toMatchObject({ power: null, minutes: null });
    expect(problems.map(({ place }) => (place.kind === 'text' ? [place.line, place.quote] : []))).toEqual([
      [2, 'maybe'],
      [3, 'an evening'],
      [4, '3 m³'],
    ]);
  });

  it('takes no power that switches twice', () => {
    expect(read('- Power: off → on → off').problems).toHaveLength(1);
  });

  it('keeps the first of two statements, and says so', () => {
    const { problems, steps } = read('- Time: 5 min\n- Time: 10 min');
    expect(steps['fit-it']?.minutes?.value.hands).toBe(5);
    expect(problems.map(({ place }) => (place.kind === 'text' ? place.line : 0))).toEqual([3]);
  });
});

describe('readFacts, Measure, Expect and cautions', () => {
  const measured = (value: string) => step(`- Measure: ${value}`).measures[0]?.value;

  it.each([
    ['U1.5V – U1.GND > 1 kΩ', ['U1.5V', 'U1.GND'], '> 1 kΩ'],
    ['U1.5V - U1.GND 5.0 V ± 0.25 V', ['U1.5V', 'U1.GND'], '5.0 V ± 0.25 V'],
    ['C1.+ – C1.-: 3.3 V', ['C1.+', 'C1.-'], '3.3 V'],
    ['U1.3V3 to U1.GND about 3.3 V', ['U1.3V3', 'U1.GND'], 'about 3.3 V'],
    ['across R1 330 Ω', ['R1'], '330 Ω'],
    ['between U1.GND and case: no continuity', ['U1.GND', 'case'], 'no continuity'],
  ])('reads %s', (value, between, expect_) => {
    expect(measured(value)).toEqual({ between, expect: expect_, text: value });
  });

  it('says where nothing to read or nowhere to probe is named', () => {
    expect(read('- Measure: U1.5V – U1.GND\n- Measure: > 1 kΩ').problems).toHaveLength(2);
  });

  it('keeps messages as told, without their markup', () => {
    const facts = step('- Expect: the `LED` glows **dim**\n- Side: top\n- Caution: Hot.\n- Danger: Mains.');
    expect(facts.expects[0]?.value).toBe('the LED glows dim');
    expect(facts.side?.value).toBe('top');
    expect(facts.hazards.map(({ value }) => value)).toEqual([
      { word: 'caution', message: 'Hot.' },
      { word: 'danger', message: 'Mains.' },
    ]);
  });

  it('says where a label has no value', () => {
    expect(read('- Expect:').problems).toHaveLength(1);
  });
});

describe('readFacts, controllers', () => {
  const code = ['firmware/main.cpp: 5 6', 'firmware/pins.h: 16', 'tools/plot.py: 1'];
  const files = ['firmware/main.cpp', 'firmware/pins.h', 'tools/plot.py'];

  it('takes the board that a step loads code on to, with the files beside that code', () => {
    const { controllers, drivenPins } = read('- Code: firmware/main.cpp → U1', { code, files });
    expect(controllers).toMatchObject([
      { basis: 'declared', value: { part: 'U1', ref: 'U1', files: ['firmware/main.cpp', 'firmware/pins.h'] } },
    ]);
    expect(drivenPins.map(({ ref, pin }) => `${ref}.${pin}`)).toEqual(['U1.5', 'U1.6', 'U1.16']);
  });

  it('takes the only part that is described as a controller', () => {
    const { controllers } = read('', {
      code,
      parts: ['U1: display module', 'U2: board with ATmega328', 'R1: resistor'],
    });
    expect(controllers).toMatchObject([{ basis: 'derived', value: { ref: 'U2' } }]);
  });

  it('takes the part whose wired pins the code names most, and none where two draw', () => {
    const two = ['U1: module', 'U2: module'];
    const wiring = ['U1.GPIO5 R1.1', 'U1.GPIO6 R1.2', 'U2.GPIO5 R2.1'];
    expect(read('', { code, parts: two, wiring }).controllers).toMatchObject([{ value: { ref: 'U1' } }]);
    expect(read('', { code, parts: two, wiring: [...wiring, 'U2.GPIO6 R2.2'] }).controllers).toEqual([]);
    expect(read('', { code, parts: ['R1: resistor'] }).controllers).toEqual([]);
  });
});
