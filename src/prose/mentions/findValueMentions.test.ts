import { describe, expect, it } from 'vitest';
import { lineStartsOf, placeOf } from '#core/sourceText.ts';
import { type MadeUp, madeUpBuild } from '../madeUpBuild.ts';
import { readFacts } from '../readFacts.ts';

const parts = [
  'R1: resistor',
  'R2, R3: resistor',
  'C1: capacitor',
  'D1: diode',
  'F1: fuse',
  'U1: ESP32 module',
  'Y1: crystal',
];

function claims(guide: string, made: MadeUp = {}) {
  return readFacts(madeUpBuild({ parts, ...made, guide })).values;
}

function values(sentence: string): string[] {
  return claims(`## Fit it\n\n${sentence}\n`).map(({ value: { ref, value } }) => `${ref} ${value.text}`);
}

describe('values in prose', () => {
  it.each([
    ['Solder R1 (330 Ω) upright.', ['R1 330 Ω']],
    ['Solder the 330 Ω resistor R1.', ['R1 330 Ω']],
    ['Solder R1, a 330 ohm resistor.', ['R1 330 ohm']],
    ['R1 is 4k7.', ['R1 4k7']],
    ['Solder R1 and R2, both 10 kΩ.', ['R1 10 kΩ', 'R2 10 kΩ']],
    ['Solder R1 and R2 (10 kΩ).', ['R2 10 kΩ']],
    ['Solder the resistors R1 and R2 (10 kΩ).', ['R1 10 kΩ', 'R2 10 kΩ']],
    ['Take the 10k resistors R2 and R3.', ['R2 10k', 'R3 10k']],
    ['R1–R3 (330 Ω) lie flat.', ['R1 330 Ω', 'R2 330 Ω', 'R3 330 Ω']],
    ['Fit R1 (330 Ω), R2 (10 kΩ) and C1 (100 nF).', ['R1 330 Ω', 'R2 10 kΩ', 'C1 100 nF']],
    ['![R1 upright](a.jpg "R1 is 330 Ω")', ['R1 330 Ω']],
    ['Use a **330 Ω** resistor for `R1`.', ['R1 330 Ω']],
    ['Y1: 16 MHz', ['Y1 16 MHz']],
    [
      'Read the bands of R1: orange, orange, brown, gold, which is 330 Ω.',
      ['R1 orange, orange, brown, gold', 'R1 330 Ω'],
    ],
    ['R2 and R3: brown-black-orange-gold.', ['R2 brown-black-orange-gold', 'R3 brown-black-orange-gold']],
    ['The bands: R1 is red, red, black, black, brown.', ['R1 red, red, black, black, brown']],
    ['C1, marked 104, stands upright.', ['C1 marked 104']],
    ['The capacitor printed 103 is C1.', ['C1 printed 103']],
    ['Solder the wires of R1: red, black and yellow.', []],
    ['Push R1 in beside the resistor with brown, black, red, gold.', []],
    ['The wires red, black, brown lead from R1 to U1.', []],
    ['C1, marked 220, stands upright.', []],
    ['The 1.85 A fuse F1 stands upright.', ['F1 1.85 A']],
  ])('hears %s', (sentence, expected) => {
    expect(values(sentence)).toEqual(expected);
  });

  it.each([
    'R1 limits the current of the 5 V supply.',
    'Measure 10 kΩ across R1.',
    'Use 220 Ω instead of 330 Ω for R1.',
    'R1 may be 220 Ω to 470 Ω.',
    'Keep R1 below 1 kΩ.',
    'R1 was 33 Ω in the first version.',
    'R1 and R2 are 10 kΩ and 4.7 kΩ.',
    'R1 and R2 (10 kΩ, 4.7 kΩ) lie flat.',
    'R1, 330 Ω, R2, 10 kΩ.',
    'R1 and C1 are 330 Ω.',
    'The LED wants 330 Ω. R1 lies beside it.',
    'R9 is 330 Ω.',
    'Wire pin R1 330 Ω.',
    'R1.1 is 330 Ω away.',
    'F1 trips at 3.7 A.',
    '[R1](r330k.md) lies flat.',
  ])('says nothing of %s', (sentence) => {
    expect(values(sentence)).toEqual([]);
  });

  it('reads rows of tables under a heading of values', () => {
    const table =
      '| part | value | hole |\n| --- | --- | --- |\n| R1 | 330 Ω | 4k7 |\n| R2, R3 | 10k | 5 |\n| C1 | 104 | 6 |\n| U1 | 5 V | 1 |';
    expect(claims(`## Fit it\n\n${table}\n`).map(({ value: { ref, value } }) => `${ref} ${value.si}`)).toEqual([
      'R1 330',
      'R2 10000',
      'R3 10000',
      'C1 1e-7',
    ]);
  });

  it('reads headings, facts, notes of the wiring and the log, but no mistakes', () => {
    const found = claims('## Fit R1 (330 Ω)\n- Parts: C1 (100 nF)\n', {
      wiring: ['R2.1 U1.D5 | R2 is 10 kΩ'],
      log: 'R3 (1 kΩ) went in.\n\nmistake: R1 (33 Ω) was in\nremedy: fit R1 (330 Ω)\n',
    });
    expect(found.map(({ value: { ref, value }, places }) => [ref, value.text, places[0]])).toMatchObject([
      ['R1', '330 Ω', { file: 'guide.md', line: 1, quote: 'R1 (330 Ω' }],
      ['C1', '100 nF', { file: 'guide.md', line: 2 }],
      ['R2', '10 kΩ', { file: 'wiring.csv' }],
      ['R3', '1 kΩ', { file: 'log.md', line: 1 }],
      ['R1', '330 Ω', { file: 'log.md', line: 4 }],
    ]);
  });

  it('leaves sections that list parts to the parts list', () => {
    const build = madeUpBuild({ parts, guide: '## Parts\n\nR1 (330 Ω)\n' });
    const sections = build.instructions.sections.map((section) => ({ ...section, role: 'parts' as const }));
    expect(readFacts({ ...build, instructions: { title: null, sections } }).values).toEqual([]);
  });

  it('places each mention exactly, over several lines', () => {
    const text = '## Fit it\n\nFirst a word.\nThen **R1** (330 Ω),\nthen [R2](x.md): 10 kΩ.\n';
    const source = {
      file: 'guide.md',
      text,
      encoding: 'utf-8' as const,
      bom: false,
      hash: '',
      lineStarts: lineStartsOf(text),
    };
    const places = claims(text).flatMap((claim) => claim.places);
    expect(places.map((place) => place.kind === 'text' && [place.line, place.quote])).toEqual([
      [4, 'R1** (330 Ω'],
      [5, 'R2](x.md): 10 kΩ'],
    ]);
    for (const place of places) if (place.kind === 'text') expect(place).toEqual(placeOf(source, place.span));
  });
});
