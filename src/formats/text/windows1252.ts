import table from './windows1252.json';

const charOfByte: readonly number[] = Array.from({ length: 256 }, (_, byte) => table.from0x80[byte - 0x80] ?? byte);
const byteOfChar: ReadonlyMap<number, number> = new Map(charOfByte.map((code, byte) => [code, byte]));

/**
 * Text of bytes in windows-1252. Every byte has a character, so nothing is lost. By a table of our own, since the
 * decoder of Node 20 reads bytes 0x80 to 0x9F as if they were ISO 8859-1.
 */
export function decodeWindows1252(bytes: Uint8Array): string {
  const pieces: string[] = [];
  // In pieces, since one call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 4096) {
    pieces.push(String.fromCharCode(...Array.from(bytes.subarray(at, at + 4096), (byte) => charOfByte[byte] ?? byte)));
  }
  return pieces.join('');
}

/** The byte of a UTF-16 code unit; undefined where the code page has none. */
export function windows1252Byte(codeUnit: number): number | undefined {
  return byteOfChar.get(codeUnit);
}
