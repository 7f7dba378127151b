import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRef, parseRefs } from './parseRefs.ts';

describe('parseRefs', () => {
  it.each([
    ['R1-R4', ['R1', 'R2', 'R3', 'R4']],
    ['R1–R4', ['R1', 'R2', 'R3', 'R4']],
    ['R1…4', ['R1', 'R2', 'R3', 'R4']],
    ['R1...R3', ['R1', 'R2', 'R3']],
    ['R1 - R3', ['R1', 'R2', 'R3']],
    ['RN8 to RN10', ['RN8', 'RN9', 'RN10']],
    ['C1, C3', ['C1', 'C3']],
    ['C1 C3', ['C1', 'C3']],
    ['C1,C3;C5', ['C1', 'C3', 'C5']],
    ['R1+R2', ['R1', 'R2']],
    ['R1/R2', ['R1', 'R2']],
    ['R1 and R2', ['R1', 'R2']],
    ['r1, Led2', ['R1', 'LED2']],
    ['R08-R10', ['R08', 'R09', 'R10']],
    ['D3, D1-D2', ['D3', 'D1', 'D2']],
  ])('reads %s', (text, refs) => {
    expect(parseRefs(text)).toEqual({ refs, problem: null });
  });

  it.each(['', '  ', ' , , ', ';'])('finds nothing to complain of in “%s”, which names nothing', (text) => {
    expect(parseRefs(text)).toEqual({ refs: [], problem: null });
  });

  it.each([
    ['R4-R1', /R4-R1 does not ascend/],
    ['R1-R1', /does not ascend/],
    ['R1-C4', /two prefixes/],
    ['R1-R99999', /99999 parts/],
    ['M2.5', /“M2\.5”/],
    ['R1.2-R1.4', /no reference/],
    ['R1, R1', /R1 is named twice/],
    ['R1, 2', /“2”/],
    ['USB cable', /“USB”/],
  ])('says what is wrong with %s', (text, problem) => {
    expect(parseRefs(text).problem).toMatch(problem);
  });

  it('reads what it can beside what it cannot', () => {
    expect(parseRefs('R1, tbd, R3').refs).toEqual(['R1', 'R3']);
  });

  it('counts an ascending range to the last', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('R', 'LED', 'SW'),
        fc.nat(900),
        fc.integer({ min: 1, max: 999 }),
        (prefix, from, more) => {
          const { refs, problem } = parseRefs(`${prefix}${from}-${prefix}${from + more}`);
          expect(problem).toBeNull();
          expect(refs).toHaveLength(more + 1);
          expect(refs.at(-1)).toBe(`${prefix}${from + more}`);
        },
      ),
      { seed: 9 },
    );
  });

  it('stays quick and small on lists that no one writes', () => {
    for (const text of [
      'R1-R99999 '.repeat(1900),
      'R1-'.repeat(6000),
      ' '.repeat(20_000),
      `R1${' '.repeat(19_000)}x`,
      'R1'.repeat(50_000),
    ]) {
      const started = performance.now();
      parseRefs(text);
      expect(performance.now() - started).toBeLessThan(2000);
    }
  });
});

describe('isRef', () => {
  it('is true for letters and a number, whatever their case', () => {
    expect(['R1', 'led12', 'CONN3', 'SW10'].every(isRef)).toBe(true);
  });
  it('is false for anything else', () => {
    expect(['', 'R', '1', 'R1A', 'R1.2', 'RELAY1', 'R 1', 'R_1', '5V', 'R123456', 'R1\n'].some(isRef)).toBe(false);
  });
});
