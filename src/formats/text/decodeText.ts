import type { Hash, Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { type Encoding, lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { decodeWindows1252 } from './windows1252.ts';

export { encodeText, firstUnencodable } from './encodeText.ts';

export type Decoded =
  | { readonly ok: true; readonly source: SourceText }
  | { readonly ok: false; readonly problem: Problem };

/**
 * Reads bytes as text: UTF-8, UTF-16 (by its byte order mark, or by where its zero bytes fall), else windows-1252.
 * What is accepted encodes back to the very bytes. Bytes that are no text are refused with the reason.
 */
export function decodeText(file: Path, bytes: Uint8Array, hash: Hash): Decoded {
  const { encoding, bom } = encodingOf(bytes);
  const text = decode(encoding, bytes.subarray(bom ? markLength(encoding) : 0));
  if (text === null) return { ok: false, problem: wrongBytes(file, encoding) };
  const control = controlAt(text);
  if (control >= 0) return { ok: false, problem: notText(file, text, control) };
  return { ok: true, source: { file, text, encoding, bom, hash, lineStarts: lineStartsOf(text) } };
}

/** Offset of the first control code that no text holds; -1 where there is none. */
function controlAt(text: string): number {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code >= 0x20 || (code >= 0x09 && code <= 0x0d) || code === escapeCode) continue;
    if (code !== ctrlZ || i < text.length - 1) return i;
  }
  return -1;
}

/** Colours a log from a serial port. */
const escapeCode = 0x1b;
/** Ended files once, and still does in old ones. */
const ctrlZ = 0x1a;

function encodingOf(bytes: Uint8Array): { encoding: Encoding; bom: boolean } {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return { encoding: 'utf-8', bom: true };
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { encoding: 'utf-16le', bom: true };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { encoding: 'utf-16be', bom: true };
  const unmarked = unmarkedUtf16(bytes);
  if (unmarked !== null) return { encoding: unmarked, bom: false };
  return { encoding: decode('utf-8', bytes) === null ? 'windows-1252' : 'utf-8', bom: false };
}

/** In UTF-16 the characters of common texts have a zero byte, always on the same side; no other text has any. */
function unmarkedUtf16(bytes: Uint8Array): Encoding | null {
  if (bytes.length === 0 || bytes.length % 2 === 1) return null;
  const zeros = [0, 0];
  for (let i = 0; i < bytes.length; i++) if (bytes[i] === 0) zeros[i % 2] = (zeros[i % 2] ?? 0) + 1;
  const [first = 0, second = 0] = zeros;
  const enough = bytes.length / 2 / 10;
  if (first === 0 && second >= enough) return 'utf-16le';
  if (second === 0 && first >= enough) return 'utf-16be';
  return null;
}

function markLength(encoding: Encoding): number {
  return encoding === 'utf-8' ? 3 : 2;
}

function decode(encoding: Encoding, bytes: Uint8Array): string | null {
  switch (encoding) {
    case 'utf-8':
    case 'utf-16le':
      return decodeStrictly(encoding, bytes);
    case 'utf-16be':
      // Swapped by hand: not every engine is built with a decoder for this byte order.
      return decodeStrictly('utf-16le', bytesSwapped(bytes));
    case 'windows-1252':
      return decodeWindows1252(bytes);
  }
}

function decodeStrictly(encoding: 'utf-8' | 'utf-16le', bytes: Uint8Array): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

function bytesSwapped(bytes: Uint8Array): Uint8Array {
  return bytes.map((_, i) => bytes[i ^ 1] ?? 0);
}

function wrongBytes(file: Path, encoding: Encoding): Problem {
  return {
    place: { kind: 'file', file },
    message: `The file begins like text in ${encoding.toUpperCase()}, but holds bytes that are no characters in it.`,
    remedy: 'Open it in an editor, look for damage, and save it as UTF-8.',
  };
}

function notText(file: Path, text: string, index: number): Problem {
  const code = text.charCodeAt(index).toString(16).toUpperCase().padStart(2, '0');
  return {
    place: { kind: 'file', file },
    message: `The file was expected to be text, but character ${index + 1} is the control code 0x${code}, which no text holds.`,
    remedy: 'If it is text, save it as UTF-8. If not, take it out of the role that it plays.',
  };
}
