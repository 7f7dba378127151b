import type { Encoding, SourceText } from '#core/sourceText.ts';
import { windows1252Byte } from './windows1252.ts';

/**
 * The bytes of a text in a file's encoding, with the byte order mark the file has. Null where the encoding has no
 * spelling for one of the characters; `firstUnencodable` tells which.
 */
export function encodeText(source: Pick<SourceText, 'encoding' | 'bom'>, text: string): Uint8Array | null {
  if (firstUnencodable(source.encoding, text) !== null) return null;
  return encode(source.encoding, source.bom ? `\uFEFF${text}` : text);
}

/** The first character that an encoding cannot hold, with its offset; null where it holds them all. */
export function firstUnencodable(encoding: Encoding, text: string): { index: number; char: string } | null {
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    if (code < 0x80) continue;
    if (encoding === 'windows-1252') {
      if (windows1252Byte(code) === undefined)
        return { index, char: String.fromCodePoint(text.codePointAt(index) ?? code) };
    } else if (isHighSurrogate(code) && isLowSurrogate(text.charCodeAt(index + 1))) {
      index++;
    } else if (isHighSurrogate(code) || isLowSurrogate(code)) {
      // Half of a pair is no character; a UTF encoder would silently write another one.
      return { index, char: String.fromCharCode(code) };
    }
  }
  return null;
}

function encode(encoding: Encoding, text: string): Uint8Array {
  switch (encoding) {
    case 'utf-8':
      return new TextEncoder().encode(text);
    case 'utf-16le':
      return utf16Bytes(text, 0);
    case 'utf-16be':
      return utf16Bytes(text, 1);
    case 'windows-1252':
      return Uint8Array.from(text, (char) => windows1252Byte(char.charCodeAt(0)) ?? 0x3f);
  }
}

function utf16Bytes(text: string, lowByteAt: 0 | 1): Uint8Array {
  const bytes = new Uint8Array(text.length * 2);
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    bytes[2 * i + lowByteAt] = code & 0xff;
    bytes[2 * i + 1 - lowByteAt] = code >> 8;
  }
  return bytes;
}

function isHighSurrogate(code: number): boolean {
  return code >= 0xd800 && code <= 0xdbff;
}

function isLowSurrogate(code: number): boolean {
  return code >= 0xdc00 && code <= 0xdfff;
}
