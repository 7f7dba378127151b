import { describe, expect, it } from 'vitest';
import { actionsIn } from './findActions.ts';
import { formsOf } from './formsOf.ts';

const actions = (words: string) => {
  const place = {
    kind: 'text' as const,
    file: 'g.md',
    span: [0, words.length] as const,
    line: 1,
    column: 1,
    quote: words,
  };
  return actionsIn({ words, place, step: null }).map(({ kind, verb, told }) => `${told} ${kind}: ${verb}`);
};

describe('actionsIn', () => {
  it('finds commands at the head of a clause', () => {
    expect(actions('Solder R1, then trim its leads and clean the board.')).toEqual([
      'do solder: Solder',
      'do cut: trim',
      'do clean: clean',
    ]);
  });
  it('keeps apart what is told, what is forbidden and what is only spoken of', () => {
    expect(actions('Do not solder yet. The soldered joint shines. Now solder it.')).toEqual([
      'not solder: solder',
      'mention solder: soldered',
      'do solder: solder',
    ]);
  });
  it('takes the longest words for the work', () => {
    expect(actions('Turn the board over. Plug in the adapter and switch it on.')).toEqual([
      'do turn-over: Turn the board over',
      'do plug-in: Plug in',
      'do switch-on: switch it on',
    ]);
  });
  it('does not take names of tools for work', () => {
    expect(actions('Lay out the soldering iron, a drill bit and a cutting tool.')).toEqual([]);
  });
  it('asks verbs of many meanings for their object', () => {
    expect(actions('Flash the firmware. The lights flash twice. Load the tray.')).toEqual(['do load-code: Flash']);
  });
  it('says where the words stand', () => {
    const words = 'Wait.\nGlue the lid.';
    const place = {
      kind: 'text' as const,
      file: 'g.md',
      span: [10, 10 + words.length] as const,
      line: 3,
      column: 1,
      quote: words,
    };
    expect(actionsIn({ words: words.replace('\n', ' '), place, step: 's' })[1]?.place).toMatchObject({
      line: 4,
      column: 1,
      span: [16, 20],
      quote: 'Glue',
    });
  });
});

describe('formsOf', () => {
  it('inflects as English does', () => {
    expect(formsOf('solder')).toEqual(['solder', 'solders', 'soldered', 'soldering']);
    expect(formsOf('strip')).toEqual(['strip', 'strips', 'stripped', 'stripping']);
    expect(formsOf('glue')).toEqual(['glue', 'glues', 'glued', 'gluing']);
    expect(formsOf('crimp')).toEqual(['crimp', 'crimps', 'crimped', 'crimping']);
    expect(formsOf('switch on')).toEqual(['switch on', 'switches on', 'switched on', 'switching on']);
    expect(formsOf('cut')).toEqual(['cut', 'cuts', 'cutting']);
    expect(formsOf('bend')).toEqual(['bend', 'bends', 'bending', 'bent']);
  });
});
