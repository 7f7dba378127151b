import { describe, expect, it } from 'vitest';
import { type MadeUp, madeUpBuild } from '../madeUpBuild.ts';
import { readFacts } from '../readFacts.ts';

const parts = ['R1: resistor', 'U1: ESP32 module', 'U2: buffer', 'LED1: ring', 'J1: jack', 'D5: diode'];

function pins(sentence: string, made: MadeUp = {}): string[] {
  return readFacts(madeUpBuild({ parts, ...made, guide: `## Fit it\n\n${sentence}\n` })).pins.map(
    ({ value: { end, other } }) => `${end.ref}.${end.pin}${other === null ? '' : ` – ${other.ref}.${other.pin}`}`,
  );
}

describe('pins in prose', () => {
  it.each([
    ['The wire at U1.IO16 is green.', ['U1.IO16']],
    ['Find pin D5 of U1.', ['U1.D5']],
    ['Find pin 14 (VCC) of U2.', ['U2.14']],
    ['U1 pin D5 is free.', ['U1.D5']],
    ['The data goes in at GPIO16 of the module.', ['U1.GPIO16']],
    ['A0 on U1 reads the light.', ['U1.A0']],
    ['Touch `U1.5V`.', ['U1.5V']],
  ])('hears %s', (sentence, expected) => {
    expect(pins(sentence)).toEqual(expected);
  });

  it.each([
    'See U1.pdf and R1.jpg.',
    'X9.5 and M2.5 are no parts.',
    'The LED on U1 glows.',
    'Solder D5 with its stripe to the left.',
    'The pin printed on R1 is short.',
    'Take R1 of the two.',
    '[photo](U1.D5/x.jpg)',
  ])('hears none in %s', (sentence) => {
    expect(pins(sentence)).toEqual([]);
  });

  it('knows a named pin by the wiring', () => {
    expect(pins('Solder red to TIP of J1.')).toEqual([]);
    expect(pins('Solder red to TIP of J1.', { wiring: ['J1.TIP R1.1'] })).toEqual(['J1.TIP']);
  });

  it('does not take the board for certain where two run code', () => {
    const two = { files: ['a.py', 'b.py'], parts: ['U1: ESP32 module', 'U2: ESP32 module'] };
    const guide = (code: string) => `## Fit it\n- Code: ${code}\n\nUse GPIO16 of the module.\n`;
    const found = (code: string) => readFacts(madeUpBuild({ ...two, guide: guide(code) })).pins.length;
    expect(found('a.py → U1')).toBe(1);
    expect(found('a.py → U1, b.py → U2')).toBe(0);
  });

  it.each([
    'Solder it from U1.IO16, in column 10, to R1.1, which is short.',
    'U1.IO16 → R1.1',
    'Connect U1.IO16 and R1.1.',
    'Run a wire from pin IO16 of U1 to R1.1.',
  ])('joins the two pins of %s', (sentence) => {
    expect(pins(sentence)).toEqual(['U1.IO16 – R1.1', 'R1.1 – U1.IO16']);
  });

  it.each([
    'Measure from U1.5V to U1.GND.',
    'Connect the probe to U1.5V and read U1.GND.',
    'Solder red to U1.5V and black to U1.GND.',
    'Connect U1.IO16 to the ring and its wire to R1.1.',
    'Solder the wires of U1.IO16 and R1.1.',
    'Never connect U1.5V to R1.1.',
    'Join U1.IO16, R1.1 and LED1.IN.',
  ])('joins none in %s', (sentence) => {
    const { pins: found } = readFacts(madeUpBuild({ parts, guide: `## Fit it\n\n${sentence}\n` }));
    expect(found.length).toBeGreaterThan(1);
    expect(found.every(({ value }) => value.other === null)).toBe(true);
  });

  it('tells the step and the exact place', () => {
    const [claim] = readFacts(madeUpBuild({ parts, guide: '## Fit it\n\nOne.\nThen U1.IO16, please.\n' })).pins;
    expect(claim?.value.step).toBe('fit-it');
    expect(claim?.places).toMatchObject([{ file: 'guide.md', line: 4, column: 6, quote: 'U1.IO16' }]);
  });
});
