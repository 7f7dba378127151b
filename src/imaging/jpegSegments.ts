import { viewOf } from './metadataBlock.ts';

/** A marker segment; `data` is its payload, without marker and length. */
export interface JpegSegment {
  /** Second byte of the marker, such as 0xe1 for APP1. */
  readonly marker: number;
  readonly data: Uint8Array;
}

export interface JpegParts {
  readonly segments: readonly JpegSegment[];
  /** Offset after the end-of-image marker; null where there is none, so the file is cut off. */
  readonly end: number | null;
}

const endOfImage = 0xd9;
const startOfScan = 0xda;

/** Walks a JPEG file from marker to marker, through all scans (ITU-T T.81 annex B). */
export function jpegSegments(bytes: Uint8Array): JpegParts {
  const view = viewOf(bytes);
  const segments: JpegSegment[] = [];
  for (let at = 2; at + 2 <= bytes.length; ) {
    const marker = bytes[at + 1] ?? 0;
    if (bytes[at] !== 0xff || marker === 0) {
      // Stray bytes between segments: on to the next marker, as decoders do.
      at = nextMarker(bytes, at + 1);
    } else if (marker === 0xff) {
      at += 1;
    } else if (marker === endOfImage) {
      return { segments, end: at + 2 };
    } else if (isBare(marker)) {
      at += 2;
    } else {
      if (at + 4 > bytes.length) break;
      const end = at + 2 + view.getUint16(at + 2);
      segments.push({ marker, data: bytes.subarray(at + 4, Math.max(at + 4, end)) });
      at = marker === startOfScan ? nextMarker(bytes, end) : Math.max(end, at + 4);
    }
  }
  return { segments, end: null };
}

/** Offset of the next marker that is neither a stuffed zero nor a restart marker. */
function nextMarker(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at !== -1; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next !== undefined && next !== 0 && next !== 0xff && !isRestart(next)) return at;
  }
  return bytes.length;
}

function isBare(marker: number): boolean {
  return marker === 0x01 || marker === 0xd8 || isRestart(marker);
}

function isRestart(marker: number): boolean {
  return marker >= 0xd0 && marker <= 0xd7;
}
