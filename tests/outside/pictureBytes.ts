import { crc32 } from './crc32.ts';

/** Bytes of a text in Latin-1. */
export function latin(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

export function joined(...parts: (Uint8Array | string)[]): Uint8Array {
  return new Uint8Array(Buffer.concat(parts.map((part) => (typeof part === 'string' ? latin(part) : part))));
}

export function uint32(value: number): Uint8Array {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setUint32(0, value);
  return bytes;
}

export function uint16(value: number): Uint8Array {
  return Uint8Array.of(value >> 8, value & 255);
}

/** A JPEG marker segment. */
export function segment(marker: number, ...data: (Uint8Array | string)[]): Uint8Array {
  const content = joined(...data);
  return joined(Uint8Array.of(0xff, marker), uint16(content.length + 2), content);
}

/** A JPEG with segments added right after its start. */
export function withSegments(jpeg: Uint8Array, ...segments: Uint8Array[]): Uint8Array {
  return joined(jpeg.subarray(0, 2), ...segments, jpeg.subarray(2));
}

/** A PNG chunk. */
export function chunk(type: string, ...data: (Uint8Array | string)[]): Uint8Array {
  const content = joined(type, ...data);
  return joined(uint32(content.length - 4), content, uint32(crc32(content)));
}

/** A PNG with chunks added right after its header. */
export function withChunks(png: Uint8Array, ...chunks: Uint8Array[]): Uint8Array {
  return joined(png.subarray(0, 33), ...chunks, png.subarray(33));
}

/** A box of an MP4 or QuickTime file. */
export function box(type: string, ...data: (Uint8Array | string)[]): Uint8Array {
  const content = joined(...data);
  return joined(uint32(content.length + 8), type, content);
}

/** A TIFF structure, big-endian, of ASCII (text), LONG (number) and RATIONAL (pairs) tags and sub-directories. */
export function tiff(ifd: Ifd): Uint8Array {
  return joined('MM\0*', uint32(8), directory(ifd, 8));
}

type Rationals = readonly (readonly [number, number])[];
export type TagValue = string | number | Rationals | Uint8Array | Ifd;
export interface Ifd {
  readonly [tag: number]: TagValue;
}

function directory(ifd: Ifd, at: number): Uint8Array {
  const tags = Object.entries(ifd).map(([tag, value]) => [Number(tag), value] as const);
  let free = at + 2 + 12 * tags.length + 4;
  const entries: Uint8Array[] = [];
  const extra: Uint8Array[] = [];
  for (const [tag, value] of tags) {
    const { type, count, data } = encoded(value, free);
    const inline = data.length <= 4 && !isIfd(value);
    entries.push(joined(uint16(tag), uint16(type), uint32(count), inline ? padded(data, 4) : uint32(free)));
    if (inline) continue;
    extra.push(data);
    free += data.length;
  }
  return joined(uint16(tags.length), ...entries, uint32(0), ...extra);
}

function encoded(value: TagValue, at: number): { type: number; count: number; data: Uint8Array } {
  if (typeof value === 'string') return { type: 2, count: value.length + 1, data: latin(`${value}\0`) };
  if (typeof value === 'number') return { type: 4, count: 1, data: uint32(value) };
  if (value instanceof Uint8Array) return { type: 7, count: value.length, data: value };
  if (isRationals(value)) {
    return { type: 5, count: value.length, data: joined(...value.flatMap(([a, b]) => [uint32(a), uint32(b)])) };
  }
  return { type: 4, count: 1, data: directory(value, at) };
}

function isIfd(value: TagValue): boolean {
  return typeof value === 'object' && !isRationals(value) && !(value instanceof Uint8Array);
}

function isRationals(value: TagValue): value is Rationals {
  return Array.isArray(value);
}

function padded(data: Uint8Array, length: number): Uint8Array {
  return joined(data, new Uint8Array(length - data.length));
}

/** A GPS directory at the given degrees, minutes and seconds. */
export function gps(latitude: readonly [number, number, number], longitude: readonly [number, number, number]): Ifd {
  const rational = (values: readonly number[]) => values.map((value) => [value * 100, 100] as const);
  return { 1: 'N', 2: rational(latitude), 3: 'E', 4: rational(longitude) };
}
