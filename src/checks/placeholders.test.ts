import { describe, expect, it } from 'vitest';
import { findPlaceholders } from './placeholders.ts';

const wordsIn = (text: string) => findPlaceholders(text).map(({ words }) => words);

describe('findPlaceholders', () => {
  it('finds the marks that writers leave for themselves', () => {
    expect(wordsIn('TODO: resistor')).toEqual(['TODO']);
    expect(wordsIn('Value (TBD), see FIXME.')).toEqual(['TBD', 'FIXME']);
    expect(wordsIn('Torque: XXX')).toEqual(['XXX']);
    expect(wordsIn('Lorem ipsum dolor')).toEqual(['Lorem ipsum']);
    expect(wordsIn('Pictures coming soon.')).toEqual(['coming soon']);
    expect(wordsIn('Insert table here')).toEqual(['Insert table here']);
    expect(wordsIn('Add a nice photo of the board here.')).toEqual(['Add a nice photo of the board here']);
    expect(wordsIn('Your text here')).toEqual(['Your text here']);
    expect(wordsIn('Price: T.B.D., length xx mm, torque TBA')).toEqual(['T.B.D.', 'xx mm', 'TBA']);
    expect(wordsIn('Width: [insert width]')).toEqual(['[insert width]']);
    expect(wordsIn('Photos will follow. Details to come.')).toEqual(['Photos will follow', 'Details to come']);
  });
  it('leaves part numbers, names and instructions alone', () => {
    for (const text of [
      'LM1117-XXX',
      'AMS1117XXX',
      'todo list',
      'TODO.md',
      'MY_TODO_PIN',
      'Insert the battery here',
      'Put the screw here',
      'xxx',
      'What is that?? Really?',
      'The size XXXL',
      'Write <your-network> into it',
      '[Add a fuse](fuse.md)',
      'The instructions will follow the colours',
      'TBA-7 mount',
      'The axis is xx, the next yy',
    ]) {
      expect(wordsIn(text), text).toEqual([]);
    }
  });
  it('gives offsets in the text as it stands', () => {
    const text = 'Ω µ — TBD';
    const [found] = findPlaceholders(text);
    expect(text.slice(found?.at, (found?.at ?? 0) + 3)).toBe('TBD');
  });
});
