import { latin1, viewOf } from './metadataBlock.ts';

/** A box of an MP4, QuickTime or HEIC file; `data` is its payload. */
export interface MovieBox {
  readonly type: string;
  readonly data: Uint8Array;
}

/** Size of the header that `readBoxHeader` needs at most. */
export const boxHeaderBytes = 16;

/**
 * Type, header size and full size of a box from its first bytes (ISO/IEC 14496-12 4.2); `size` is null for a
 * box that runs to the end of the file. Null where these bytes are no box.
 */
export function readBoxHeader(
  bytes: Uint8Array,
): { readonly type: string; readonly header: number; readonly size: number | null } | null {
  if (bytes.length < 8) return null;
  const view = viewOf(bytes);
  const type = latin1(bytes.subarray(4, 8));
  const size = view.getUint32(0);
  if (size === 0) return { type, header: 8, size: null };
  if (size !== 1) return size < 8 ? null : { type, header: 8, size };
  if (bytes.length < 16) return null;
  const large = Number(view.getBigUint64(8));
  return large < 16 ? null : { type, header: 16, size: large };
}

/** The boxes that lie side by side in `bytes`. */
export function boxesIn(bytes: Uint8Array): MovieBox[] {
  const boxes: MovieBox[] = [];
  for (let at = 0; at < bytes.length; ) {
    const found = readBoxHeader(bytes.subarray(at, at + boxHeaderBytes));
    if (!found) break;
    const end = found.size === null ? bytes.length : at + found.size;
    boxes.push({ type: found.type, data: bytes.subarray(at + found.header, end) });
    at = end;
  }
  return boxes;
}

/** Boxes at a path of types, such as `moov/trak/tkhd`. */
export function boxesAt(boxes: readonly MovieBox[], path: string): MovieBox[] {
  const [first, ...rest] = path.split('/');
  const here = boxes.filter(({ type }) => type === first);
  return rest.length === 0 ? here : here.flatMap(({ data }) => boxesAt(boxesIn(data), rest.join('/')));
}
