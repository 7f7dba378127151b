import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineStartsOf } from '#core/sourceText.ts';
import { decodeText } from './decodeText.ts';
import { encodeText, firstUnencodable } from './encodeText.ts';

const read = (...bytes: number[]) => decodeText('a.txt', Uint8Array.from(bytes), 'h');
const textOf = (...bytes: number[]) => {
  const decoded = read(...bytes);
  return decoded.ok ? [decoded.source.encoding, decoded.source.bom, decoded.source.text] : decoded.problem.message;
};

describe('decodeText', () => {
  // The spellings of é, Ω and 🔧 are those of RFC 3629 (UTF-8) and RFC 2781 (UTF-16), worked out by hand.
  it('reads UTF-8 with and without a byte order mark', () => {
    expect(textOf(0x41, 0xc3, 0xa9, 0xe2, 0x84, 0xa6)).toEqual(['utf-8', false, 'Aé\u2126']);
    expect(textOf(0xef, 0xbb, 0xbf, 0xf0, 0x9f, 0x94, 0xa7)).toEqual(['utf-8', true, '🔧']);
  });
  it('reads UTF-16 of both byte orders by its mark', () => {
    expect(textOf(0xff, 0xfe, 0x41, 0x00, 0x3d, 0xd8, 0x27, 0xdd)).toEqual(['utf-16le', true, 'A🔧']);
    expect(textOf(0xfe, 0xff, 0x00, 0x41, 0xd8, 0x3d, 0xdd, 0x27)).toEqual(['utf-16be', true, 'A🔧']);
  });
  it('reads UTF-16 without a mark by where the zero bytes fall', () => {
    expect(textOf(0x52, 0x00, 0x31, 0x00)).toEqual(['utf-16le', false, 'R1']);
    expect(textOf(0x00, 0x52, 0x00, 0x31)).toEqual(['utf-16be', false, 'R1']);
  });
  it('falls back to windows-1252 where the bytes are no UTF-8', () => {
    expect(textOf(0x32, 0x30, 0xb5, 0x41, 0x20, 0x80, 0x92)).toEqual(['windows-1252', false, '20µA €’']);
  });
  it('keeps a second mark as a character of the text', () => {
    expect(textOf(0xef, 0xbb, 0xbf, 0xef, 0xbb, 0xbf, 0x41)).toEqual(['utf-8', true, '\uFEFFA']);
  });
  it('gives an empty text for no bytes', () => {
    expect(textOf()).toEqual(['utf-8', false, '']);
    expect(textOf(0xff, 0xfe)).toEqual(['utf-16le', true, '']);
  });
  it('refuses what is no text, naming the control code', () => {
    expect(textOf(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0x00)).toContain('0x1A');
    expect(textOf(0x41, 0x00, 0x42)).toContain('character 2 is the control code 0x00');
  });
  it('refuses damage after a mark rather than reading it as something else', () => {
    expect(textOf(0xef, 0xbb, 0xbf, 0xc3)).toContain('UTF-8');
    expect(textOf(0xff, 0xfe, 0x41)).toContain('UTF-16LE');
    expect(textOf(0xff, 0xfe, 0x3d, 0xd8)).toContain('UTF-16LE');
    expect(textOf(0xfe, 0xff, 0xd8, 0x3d)).toContain('UTF-16BE');
  });
  it('lets coloured serial logs and a final Ctrl-Z through', () => {
    expect(textOf(0x1b, 0x5b, 0x6d, 0x1a)).toEqual(['utf-8', false, '\u001b[m\u001a']);
  });
  it('decodes windows-1252 as an independent table does', () => {
    // From the cp1252 codec of CPython 3.11: bytes 0x80 to 0xFF without 81, 8D, 8F, 90 and 9D, which it leaves open.
    const open = [0x81, 0x8d, 0x8f, 0x90, 0x9d];
    const bytes = Array.from({ length: 128 }, (_, i) => i + 128).filter((byte) => !open.includes(byte));
    expect(textOf(...bytes)[2]).toBe(
      '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ\xa0¡¢£¤¥¦§¨©ª«¬\xad®¯°±²³´µ¶·¸¹º»¼½¾¿ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖ×ØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõö÷øùúûüýþÿ',
    );
  });
  it('writes back the very bytes of whatever it accepts', () => {
    let accepted = 0;
    const anyBytes = fc.oneof(
      fc.uint8Array({ maxLength: 40 }),
      fc.uint8Array({ min: 32, maxLength: 40 }),
      fc.string({ unit: 'binary' }).map((text) => new TextEncoder().encode(text)),
      fc
        .tuple(fc.constantFrom([0xff, 0xfe], [0xfe, 0xff], [0xef, 0xbb, 0xbf]), fc.uint8Array({ maxLength: 40 }))
        .map(([mark, rest]) => Uint8Array.from([...mark, ...rest])),
    );
    fc.assert(
      fc.property(anyBytes, (bytes) => {
        const decoded = decodeText('a.txt', bytes, 'h');
        if (!decoded.ok) return;
        accepted++;
        expect(encodeText(decoded.source, decoded.source.text)).toEqual(bytes);
        expect(decoded.source.lineStarts).toEqual(lineStartsOf(decoded.source.text));
      }),
      { numRuns: 2000, seed: 11 },
    );
    expect(accepted).toBeGreaterThan(500);
  });
});

describe('encodeText', () => {
  it('refuses a character that windows-1252 lacks and says which', () => {
    expect(encodeText({ encoding: 'windows-1252', bom: false }, '330 Ω')).toBeNull();
    expect(firstUnencodable('windows-1252', '330 Ω')).toEqual({ index: 4, char: 'Ω' });
    expect(firstUnencodable('windows-1252', 'a 🔧')).toEqual({ index: 2, char: '🔧' });
  });
  it('refuses half of a surrogate pair in every encoding', () => {
    for (const encoding of ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const) {
      expect(firstUnencodable(encoding, 'ab\ud83d')?.index).toBe(2);
      expect(encodeText({ encoding, bom: false }, '\udd27')).toBeNull();
    }
  });
  it('writes the mark only where the file has one', () => {
    expect(encodeText({ encoding: 'utf-16be', bom: true }, 'µ')).toEqual(Uint8Array.of(0xfe, 0xff, 0x00, 0xb5));
    expect(encodeText({ encoding: 'utf-8', bom: false }, 'µ')).toEqual(Uint8Array.of(0xc2, 0xb5));
  });
});
