import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { macroBody } from './macroBody.ts';

describe('macroBody', () => {
  it.each([
    ['5', '5'],
    ['(5)', '5'],
    ['((5))', '5'],
    ['0x3C', '0x3C'],
    ['-1', '-1'],
    ['1.5f', '1.5f'],
    ['5 // note', '5'],
    ['5 /* note */', '5'],
    ['(gpio_num_t)5', '5'],
    ['((gpio_num_t) 5)', '5'],
    ['\\\n  5', '5'],
  ])('%s is a number', (text, number) => {
    expect(macroBody(text, 0)).toMatchObject({ kind: 'number', text: number });
  });

  it('points at the number itself, whatever stands around it', () => {
    expect(macroBody(' ( 42 ) // note', 100).span).toEqual([103, 105]);
  });

  it('reads names, texts and lists', () => {
    expect(macroBody('GPIO_NUM_4', 0)).toMatchObject({ kind: 'name', path: ['GPIO_NUM_4'] });
    expect(macroBody('pins::lamp', 0)).toMatchObject({ kind: 'name', path: ['pins', 'lamp'] });
    expect(macroBody('"a \\"b\\" c"', 10)).toMatchObject({ kind: 'text', text: 'a \\"b\\" c', span: [11, 20] });
    expect(macroBody('F("a")', 0)).toMatchObject({ kind: 'text', text: 'a', span: [3, 4] });
    expect(macroBody('{2, 3, }', 0)).toMatchObject({ kind: 'list', items: [{}, {}] });
  });

  it.each(['5 + 6', 'A0 + 1', 'do { x(); } while (0)', 'digitalWrite(5, HIGH)', '', '(', '{1, 2', '-', 'a b'])(
    'says nothing of %s',
    (text) => {
      expect(macroBody(text, 0).kind).toBe('other');
    },
  );

  it('reads any text without fault and stays inside it', () => {
    const pieces = fc.constantFrom(
      '(',
      ')',
      '{',
      '}',
      ',',
      '-',
      '5',
      'A0',
      '"',
      '"x"',
      ' ',
      '//',
      '/*',
      '*/',
      '\\\n',
      '::',
      '\u{1f600}',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 60 }), fc.nat(50), (parts, offset) => {
        const text = parts.join('');
        const [start, end] = macroBody(text, offset).span;
        return start >= offset && start <= end && end <= offset + text.length;
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});
