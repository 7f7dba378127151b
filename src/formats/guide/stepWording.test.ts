import { describe, expect, it } from 'vitest';
import { countTelling, tellingOfHeading } from './stepWording.ts';

describe('tellingOfHeading', () => {
  it.each([
    'Wire the ring',
    'Solder R1',
    'Install the lid',
    'Mounting the board',
    '3. Connect both halves',
    'Widerstände einlöten',
    'Souder la LED',
  ])('hears an instruction in %j', (heading) => {
    expect(tellingOfHeading(heading)).toBe('yes');
  });

  it.each(['Power supply', 'Test results', 'Wiring diagram', 'Solder'])('is not sure of %j', (heading) => {
    expect(tellingOfHeading(heading)).toBe('maybe');
  });

  it.each(['Rotary encoders', 'The base', 'Features', ''])('hears none in %j', (heading) => {
    expect(tellingOfHeading(heading)).toBe('no');
  });
});

describe('countTelling', () => {
  it('counts sentences that open with an instruction, past adverbs and conditions', () => {
    expect(countTelling('First, push R1 in. The lead is short.\nIf it stays dark, check the fuse. It glows.')).toBe(2);
  });

  it('does not count a noun that could be a verb', () => {
    expect(countTelling('Power comes from USB. Solder is toxic. Light falls in.')).toBe(0);
  });
});
