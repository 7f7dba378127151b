import { latin1, viewOf } from './metadataBlock.ts';

export interface PngChunk {
  readonly type: string;
  readonly data: Uint8Array;
}

export interface PngParts {
  readonly chunks: readonly PngChunk[];
  /** Offset after the IEND chunk; null where there is none, so the file is cut off. */
  readonly end: number | null;
}

/** Walks a PNG file from chunk to chunk (ISO/IEC 15948 5.3). */
export function pngChunks(bytes: Uint8Array): PngParts {
  const view = viewOf(bytes);
  const chunks: PngChunk[] = [];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const size = view.getUint32(at);
    const type = latin1(bytes.subarray(at + 4, at + 8));
    const end = at + 12 + size;
    chunks.push({ type, data: bytes.subarray(at + 8, at + 8 + size) });
    if (type === 'IEND') return { chunks, end };
    at = end;
  }
  return { chunks, end: null };
}
