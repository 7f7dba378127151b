import type { Edit } from '#core/edit.ts';
import { assert } from '#core/failure.ts';
import type { SourceText } from '#core/sourceText.ts';
import { encodeText } from '../text/decodeText.ts';

/**
 * A file's bytes with the bytes of each span replaced. The spans fit the text and its encoding holds the new words:
 * the caller has made sure. All other bytes are copied, never encoded anew.
 */
export function spliceBytes(source: SourceText, bytes: Uint8Array, changes: Edit['changes']): Uint8Array {
  const offsets = byteOffsets(
    source,
    changes.flatMap(({ span }) => [span[0], span[1]]),
  );
  const pieces: Uint8Array[] = [];
  let at = 0;
  for (const [i, { text }] of changes.entries()) {
    const start = offsets[2 * i] ?? at;
    const encoded = encodeText({ encoding: source.encoding, bom: false }, text);
    assert(encoded !== null, 'the encoding of the file holds the new words');
    pieces.push(bytes.subarray(at, start), encoded);
    at = offsets[2 * i + 1] ?? start;
  }
  pieces.push(bytes.subarray(at));
  return joined(pieces);
}

/** Byte offsets of ascending offsets in the text, the byte order mark counted. */
function byteOffsets(source: SourceText, offsets: readonly number[]): number[] {
  const mark = source.bom ? (source.encoding === 'utf-8' ? 3 : 2) : 0;
  switch (source.encoding) {
    case 'windows-1252':
      return offsets.map((offset) => offset);
    case 'utf-16le':
    case 'utf-16be':
      return offsets.map((offset) => mark + 2 * offset);
    case 'utf-8':
      return utf8Offsets(source.text, offsets).map((offset) => mark + offset);
  }
}

function utf8Offsets(text: string, offsets: readonly number[]): number[] {
  let unit = 0;
  let byte = 0;
  return offsets.map((offset) => {
    for (; unit < offset; unit++) byte += utf8Length(text.charCodeAt(unit));
    return byte;
  });
}

/** Bytes that a UTF-16 code unit takes in UTF-8. Each half of a surrogate pair counts for two of its four. */
function utf8Length(codeUnit: number): number {
  if (codeUnit < 0x80) return 1;
  if (codeUnit < 0x800 || (codeUnit >= 0xd800 && codeUnit <= 0xdfff)) return 2;
  return 3;
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
