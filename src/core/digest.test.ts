import { describe, expect, it } from 'vitest';
import { digestOf } from '#core/digest.ts';

describe('digestOf', () => {
  it('gives the FNV-1a offset basis for the empty text', () => {
    // FNV-1a, 32 bit: the hash of no bytes is the offset basis 0x811c9dc5 (draft-eastlake-fnv).
    expect(digestOf('').slice(0, 8)).toBe('811c9dc5');
  });
  it('differs when one character does', () => {
    expect(digestOf('330 Ω')).not.toBe(digestOf('33 Ω'));
  });
});
