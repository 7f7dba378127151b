import { latin1, type MetadataBlock, viewOf } from './metadataBlock.ts';

const iptc = 0x0404;
const thumbnails = new Set([0x0409, 0x040c]);

/** Image resource blocks (`8BIM`), as a JPEG's APP13 segment or a TIFF tag holds them. */
export function readPhotoshop(bytes: Uint8Array): MetadataBlock[] {
  const view = viewOf(bytes);
  const blocks: MetadataBlock[] = [];
  for (let at = 0; at + 12 <= bytes.length && latin1(bytes.subarray(at, at + 4)) === '8BIM'; ) {
    const id = view.getUint16(at + 4);
    // Names and data are padded to an even length.
    const sizeAt = at + 6 + even(1 + view.getUint8(at + 6));
    if (sizeAt + 4 > bytes.length) break;
    const size = view.getUint32(sizeAt);
    const data = bytes.subarray(sizeAt + 4, sizeAt + 4 + size);
    if (id === iptc) blocks.push({ kind: 'iptc', bytes: data });
    // A JPEG picture behind a header of 28 bytes.
    if (thumbnails.has(id)) blocks.push({ kind: 'preview', bytes: data.subarray(28) });
    at = sizeAt + 4 + even(size);
  }
  return blocks;
}

function even(n: number): number {
  return n + (n % 2);
}
