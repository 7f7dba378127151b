import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edit } from '#core/edit.ts';
import { decodeText } from '../text/decodeText.ts';
import { applyEdit, undoEdit } from './applyEdit.ts';

function sourceOf(bytes: Uint8Array, hash = 'before') {
  const decoded = decodeText('parts.csv', bytes, hash);
  if (!decoded.ok) throw new Error(decoded.problem.message);
  return decoded.source;
}

const edit = (...changes: [number, number, string][]): Edit => ({
  file: 'parts.csv',
  base: 'before',
  changes: changes.map(([start, end, text]) => ({ span: [start, end], text })),
  why: 'test',
});

/** Applies an edit and makes sure that it can be taken back to the very bytes. */
function apply(bytes: Uint8Array, change: Edit): Uint8Array | string {
  const applied = applyEdit(sourceOf(bytes), bytes, change);
  if (!applied.ok) return applied.problem.message;
  const undone = undoEdit(sourceOf(applied.bytes, 'after'), applied.bytes, applied.inverse);
  expect(undone.ok && undone.bytes).toEqual(bytes);
  return applied.bytes;
}

const utf8 = (text: string) => new TextEncoder().encode(text);

describe('applyEdit', () => {
  it('replaces, inserts and removes at several places in one go', () => {
    expect(apply(utf8('R1,10k,x\nR2,22k\n'), edit([0, 2, 'R9'], [6, 8, ''], [9, 9, '# ']))).toEqual(
      utf8('R9,10k\n# R2,22k\n'),
    );
  });
  it('counts UTF-16 units, whatever the characters before take in bytes', () => {
    expect(apply(utf8('🔧Ωé,1'), edit([5, 6, '22']))).toEqual(utf8('🔧Ωé,22'));
  });
  it('does not count the byte order mark, and keeps it', () => {
    expect(apply(Uint8Array.of(0xef, 0xbb, 0xbf, 0x61, 0x62), edit([0, 1, 'z']))).toEqual(
      Uint8Array.of(0xef, 0xbb, 0xbf, 0x7a, 0x62),
    );
    expect(apply(Uint8Array.of(0xfe, 0xff, 0x00, 0x61), edit([1, 1, 'µ']))).toEqual(
      Uint8Array.of(0xfe, 0xff, 0x00, 0x61, 0x00, 0xb5),
    );
  });
  it('writes windows-1252 as windows-1252', () => {
    expect(apply(Uint8Array.of(0x31, 0xb5, 0x41), edit([0, 1, '’2']))).toEqual(Uint8Array.of(0x92, 0x32, 0xb5, 0x41));
  });
  it('takes back the removal of the one character that told the encoding', () => {
    expect(apply(Uint8Array.of(0x31, 0xb5, 0x41), edit([1, 2, 'u']))).toEqual(utf8('1uA'));
    expect(apply(Uint8Array.of(0x41, 0x00), edit([0, 1, '']))).toEqual(new Uint8Array());
  });
  it('refuses an edit that was made on another version, another file or other bytes', () => {
    const bytes = utf8('R1');
    expect(apply(bytes, { ...edit([0, 1, 'C']), base: 'older' })).toContain('another version');
    expect(apply(bytes, { ...edit([0, 1, 'C']), file: 'wiring.csv' })).toContain('another version');
    const applied = applyEdit(sourceOf(bytes), utf8('R2'), edit([0, 1, 'C']));
    expect(applied.ok).toBe(false);
  });
  it('refuses spans that overlap, run backwards, leave the text or cut a character', () => {
    const bytes = utf8('a🔧\r\nb');
    expect(apply(bytes, edit([0, 3, ''], [1, 4, '']))).toContain('not in order');
    expect(apply(bytes, edit([3, 3, ''], [0, 0, '']))).toContain('not in order');
    expect(apply(bytes, edit([2, 1, '']))).toContain('does not lie in the text');
    expect(apply(bytes, edit([0, 7, '']))).toContain('does not lie in the text');
    expect(apply(bytes, edit([-1, 0, '']))).toContain('starts at -1');
    expect(apply(bytes, edit([0.5, 1, '']))).toContain('does not lie in the text');
    expect(apply(bytes, edit([2, 3, '']))).toContain('cuts a character');
    expect(apply(bytes, edit([4, 4, 'x']))).toContain('cuts a character');
  });
  it('refuses a character that the encoding cannot hold, and names it', () => {
    expect(apply(Uint8Array.of(0xb5), edit([0, 1, 'Ω']))).toContain("no spelling for 'Ω'");
    expect(apply(utf8('a'), edit([0, 1, '\ud83d']))).toContain('utf-8');
  });
  it('refuses words after which the file would be read otherwise', () => {
    // C3 A9 is 'Ã©' in windows-1252 and 'é' in UTF-8.
    expect(apply(Uint8Array.of(0xb5), edit([0, 1, 'Ã©']))).toContain('no longer be read');
    expect(apply(utf8('a'), edit([0, 0, '\ufeff']))).toContain('no longer be read');
    expect(apply(utf8('a'), edit([0, 0, '\u0000']))).toContain('no longer be read');
  });
  it('refuses to join a carriage return and a line feed that stand apart', () => {
    expect(apply(utf8('a\rX\nb'), edit([2, 3, '']))).toContain('end of line');
    expect(apply(utf8('a\nb'), edit([0, 1, 'a\r']))).toContain('end of line');
    expect(apply(utf8('a\nb'), edit([0, 2, 'a\r\n']))).toEqual(utf8('a\r\nb'));
  });
  it('gives an identical file for an edit without changes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const bytes = utf8(`x${text}`);
        expect(apply(bytes, edit())).toEqual(bytes);
      }),
      { numRuns: 200, seed: 2 },
    );
  });
});
