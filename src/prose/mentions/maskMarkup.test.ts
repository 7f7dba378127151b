import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { maskMarkup } from './maskMarkup.ts';

describe('maskMarkup', () => {
  it('leaves the words where they stand', () => {
    const text = 'See **R1** in [the table](t.md "T") and `U1`.';
    const masked = maskMarkup(text);
    for (const word of ['See', 'R1', 'the table', 'and', 'U1']) expect(masked.indexOf(word)).toBe(text.indexOf(word));
    expect(masked).not.toMatch(/[*`[\]]|t\.md|T"/);
  });

  it('makes sentences of a picture’s alternative text and caption', () => {
    const text = '![R1 upright](photos/r2.jpg "R1 is 330 Ω") next';
    const masked = maskMarkup(text);
    expect(masked.replace(/ +/g, ' ').trim()).toBe('R1 upright. R1 is 330 Ω. next');
    expect(masked.indexOf('R1 is')).toBe(text.indexOf('R1 is'));
  });

  it('blanks the targets of a picture within a link', () => {
    expect(maskMarkup('[![R1](a.jpg)](r2.md) end').trim().replace(/ +/g, ' ')).toBe('R1. end');
  });

  it('drops tags, comments and attribute lists, but no comparison', () => {
    expect(maskMarkup('<b>a</b><!-- R2 --> 3 < 4 {: .x }').replace(/ +/g, ' ').trim()).toBe('a 3 < 4');
  });

  it('never changes the length', () => {
    const piece = fc.constantFrom(
      '[',
      ']',
      '(',
      ')',
      '!',
      '"',
      ' ',
      '<b>',
      '`',
      '**',
      'R1',
      '\n',
      '> ',
      '{: a=b }',
      '<!--',
      '-->',
      "'",
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 25 }), (pieces) => {
        expect(maskMarkup(pieces.join(''))).toHaveLength(pieces.join('').length);
      }),
      { seed: 4, numRuns: 2000 },
    );
  });
});
