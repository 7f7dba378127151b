import { latin1, type MetadataBlock } from './metadataBlock.ts';
import { riffChunks } from './riffChunks.ts';

const pictureChunks = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ANIM', 'ANMF', 'ICCP']);

/** What a WebP file holds besides the picture (RFC 9649 2.7). */
export function readWebp(bytes: Uint8Array): MetadataBlock[] {
  const { chunks, end } = riffChunks(bytes);
  const blocks = chunks
    .filter(({ type }) => !pictureChunks.has(type))
    .map(({ type, data }): MetadataBlock => {
      if (type === 'XMP ') return { kind: 'xmp', text: new TextDecoder().decode(data) };
      return type === 'EXIF' ? { kind: 'exif', tiff: withoutHeader(data) } : { kind: 'other', name: type };
    });
  const rest = bytes.subarray(end);
  return rest.some((byte) => byte !== 0) ? [...blocks, { kind: 'appended', bytes: rest }] : blocks;
}

/** Some programs put the header of a JPEG segment before the TIFF structure. */
function withoutHeader(data: Uint8Array): Uint8Array {
  return latin1(data.subarray(0, 6)) === 'Exif\0\0' ? data.subarray(6) : data;
}
