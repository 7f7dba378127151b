import { latin1, viewOf } from './metadataBlock.ts';

export interface RiffChunk {
  readonly type: string;
  readonly data: Uint8Array;
}

export interface RiffParts {
  readonly chunks: readonly RiffChunk[];
  /** Offset at which the file says that it ends; beyond the bytes where it is cut off. */
  readonly end: number;
}

/** Walks a RIFF file, such as WebP, from chunk to chunk (RFC 9649 2.3). */
export function riffChunks(bytes: Uint8Array): RiffParts {
  const view = viewOf(bytes);
  const end = 8 + view.getUint32(4, true);
  const chunks: RiffChunk[] = [];
  for (let at = 12; at + 8 <= Math.min(end, bytes.length); ) {
    const size = view.getUint32(at + 4, true);
    chunks.push({ type: latin1(bytes.subarray(at, at + 4)), data: bytes.subarray(at + 8, at + 8 + size) });
    at += 8 + size + (size % 2);
  }
  return { chunks, end };
}
