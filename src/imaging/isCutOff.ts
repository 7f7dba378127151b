import type { ShotKind } from '#core/shot.ts';
import { jpegSegments } from './jpegSegments.ts';
import { pngChunks } from './pngChunks.ts';
import { riffChunks } from './riffChunks.ts';

/** Whether the end of a picture's file is missing, as when copying it was interrupted; false where the kind does not tell. */
export function isCutOff(kind: ShotKind, bytes: Uint8Array): boolean {
  switch (kind) {
    case 'jpeg':
      return jpegSegments(bytes).end === null;
    case 'png':
      return (pngChunks(bytes).end ?? Number.POSITIVE_INFINITY) > bytes.length;
    case 'webp':
      return bytes.length < 12 || riffChunks(bytes).end > bytes.length;
    case 'gif':
      // A trailer byte ends the file; padding may follow (GIF89a 27).
      return bytes.findLast((byte) => byte !== 0) !== 0x3b;
    case 'heic':
    case 'tiff':
    case 'svg':
    case 'clip':
      return false;
  }
}
