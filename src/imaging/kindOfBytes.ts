import type { ShotKind } from '#core/shot.ts';

/** How many bytes of a file are enough for `kindOfBytes`. */
export const headBytes = 4096;

/**
 * Kind of picture or clip by a file's first bytes, whatever its name says; null for anything else. AVIF is a
 * picture in the same container as HEIC and counts as that kind. Signatures: JPEG ITU-T T.81 B.1.1.3, PNG
 * ISO/IEC 15948 5.2, GIF89a 17, TIFF 6.0 section 2, RIFF WebP RFC 9649 2.4, brands ISO/IEC 14496-12 4.3 and
 * ISO/IEC 23008-12; QuickTime files without a brand open with one of its own atoms.
 */
export function kindOfBytes(head: Uint8Array): ShotKind | null {
  if (startsWith(head, [0xff, 0xd8, 0xff])) return 'jpeg';
  if (startsWith(head, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'png';
  const four = latin(head, 0, 4);
  if (four === 'RIFF' && latin(head, 8, 12) === 'WEBP') return 'webp';
  if (four === 'GIF8' && /^GIF8[79]a$/.test(latin(head, 0, 6))) return 'gif';
  if (four === 'II*\0' || four === 'MM\0*') return 'tiff';
  const box = latin(head, 4, 8);
  if (box === 'ftyp') return kindOfBrands(head);
  if (head.length >= 8 && quickTimeAtoms.has(box)) return 'clip';
  return looksLikeSvg(head) ? 'svg' : null;
}

const quickTimeAtoms = new Set(['moov', 'mdat', 'wide']);
const stillBrands = new Set(['heic', 'heix', 'heim', 'heis', 'mif1', 'msf1', 'avif', 'avis']);
const clipBrands = /^(qt {2}|isom|iso\d|mp4\d|M4V[ HP]|avc1|dash|3g[pg2][0-9a-z]|MSNV|mmp4|f4v |XAVC)$/;

function kindOfBrands(head: Uint8Array): ShotKind | null {
  const size = new DataView(head.buffer, head.byteOffset, head.length).getUint32(0);
  const major = latin(head, 8, 12);
  if (stillBrands.has(major)) return 'heic';
  if (clipBrands.test(major)) return 'clip';
  for (let at = 16; at + 4 <= Math.min(size, head.length); at += 4) {
    const brand = latin(head, at, at + 4);
    if (stillBrands.has(brand)) return 'heic';
    if (clipBrands.test(brand)) return 'clip';
  }
  return null;
}

/** An `svg` element that only a byte order mark, declarations, comments and white space come before. */
function looksLikeSvg(head: Uint8Array): boolean {
  const text = textOf(head);
  return /^\s*(?:(?:<\?[^>]*>|<!--[\s\S]*?-->|<!DOCTYPE\s+(?:[\w:]+:)?svg\b[^>[]*(?:\[[^\]]*\])?[^>]*>)\s*)*<(?:[\w-]+:)?svg[\s/>]/i.test(
    text,
  );
}

function textOf(head: Uint8Array): string {
  const [first, second] = head;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(head);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(head);
  return new TextDecoder().decode(head);
}

function startsWith(head: Uint8Array, bytes: readonly number[]): boolean {
  return head.length >= bytes.length && bytes.every((byte, i) => head[i] === byte);
}

function latin(head: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...head.subarray(from, to));
}
