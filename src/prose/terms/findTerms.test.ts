import { describe, expect, it } from 'vitest';
import { madeUpBuild } from '../madeUpBuild.ts';
import { findTerms } from './findTerms.ts';

const told = (guide: string) =>
  findTerms(madeUpBuild({ guide: `## Begin\n\n${guide}\n` })).map(({ term, told }) => [term, told]);

describe('words of the trade', () => {
  it('are used, whatever their number and spelling', () => {
    expect(told('Brush on Flux. Fit the pin headers and the pull-up resistor. Write to GPIO 4.')).toEqual([
      ['flux', 'used'],
      ['header', 'used'],
      ['pull-up', 'used'],
      ['GPIO', 'used'],
    ]);
  });
  it('are told apart from everyday words and names', () => {
    expect(told('Send it via USB in a tin. Dip the brush. Take a short walk. See FLUX_PIN and flux.cpp.')).toEqual([]);
    expect(told('Tin the pads through a via.')).toEqual([
      ['tin', 'used'],
      ['pad', 'used'],
      ['via', 'used'],
    ]);
  });
  it.each([
    'A via, a small plated hole, leads down.',
    'Use a via (a small plated hole).',
    'These small plated holes (vias) lead down.',
    'A via is a small plated hole.',
    'The via means a plated hole here.',
    'Look for the [vias](https://example.org/via).',
  ])('are explained in: %s', (text) => {
    expect(told(text).map(([, how]) => how)).toEqual(['explained']);
  });
  it.each(['Solder the header, the fuse and the lamp.', 'Fit the header (J1).', 'Fit the header (see below).'])(
    'are not explained in: %s',
    (text) => {
      expect(told(text)).toEqual([['header', 'used']]);
    },
  );
});
