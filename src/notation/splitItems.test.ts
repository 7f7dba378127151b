import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { splitItems } from './splitItems.ts';

function texts(text: string): string[] {
  return splitItems(text).map((item) => item.text);
}

describe('splitItems', () => {
  it.each([
    ['R1, M3 screw × 4; W1 30 cm', ['R1', 'M3 screw × 4', 'W1 30 cm']],
    ['4,7 k, 10 k', ['4,7 k', '10 k']],
    ['glue (clear, thin), tape', ['glue (clear, thin)', 'tape']],
    ['`a, b`, [c; d], {e, f}', ['`a, b`', '[c; d]', '{e, f}']],
    ['((a, b), c), d', ['((a, b), c)', 'd']],
    ['a,, b, ', ['a,', 'b']],
    ['', []],
    [' ; , ', []],
  ])('parts “%s”', (text, items) => {
    expect(texts(text)).toEqual(items);
  });

  it('lets a bracket or backtick that is never closed hide nothing', () => {
    expect(texts('glue (clear, tape')).toEqual(['glue (clear', 'tape']);
    expect(texts("5' rule`, tape")).toEqual(["5' rule`", 'tape']);
  });

  it('gives spans that hold the items, in order', () => {
    const pieces = fc.constantFrom('R1', ', ', ';', '(', ')', '`', ' ', '😀', ',', '[', ']');
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 30 }), (parts) => {
        const text = parts.join('');
        let last = 0;
        for (const item of splitItems(text)) {
          expect(text.slice(item.start, item.end)).toBe(item.text);
          expect(item.start).toBeGreaterThanOrEqual(last);
          last = item.end;
        }
      }),
      { seed: 12, numRuns: 500 },
    );
  });
});
