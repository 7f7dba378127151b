import { describe, expect, it } from 'vitest';
import { plainForm } from './plainForm.ts';

describe('plainForm', () => {
  it('gives both micro signs and both ohm signs one spelling', () => {
    expect(plainForm('1 \u00b5F')).toBe(plainForm('1 \u03bcF'));
    expect(plainForm('1 \u2126')).toBe(plainForm('1 \u03a9'));
  });
  it('writes a vulgar fraction apart from the whole number before it', () => {
    expect(plainForm('1½ W')).toBe('1 1/2 W');
  });
  it('does not let a raised digit join the number before it', () => {
    expect(plainForm('10³')).toBe('10^');
  });
  it('makes every kind of blank one space and every hyphen and minus one sign', () => {
    expect(plainForm(' −5\u202f\u00a0V\t‑ ')).toBe('-5 V -');
  });
});
