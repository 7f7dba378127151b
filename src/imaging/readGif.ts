import { latin1, type MetadataBlock } from './metadataBlock.ts';

const extension = 0x21;
const image = 0x2c;

/** Comments and application data of a GIF file (GIF89a 24 and 26; XMP part 3 1.1.2). */
export function readGif(bytes: Uint8Array): MetadataBlock[] {
  const blocks: MetadataBlock[] = [];
  let at = 13 + colourTableBytes(bytes[10] ?? 0);
  while (at < bytes.length) {
    if (bytes[at] === extension) {
      const { data, next } = subBlocks(bytes, at + 2);
      blocks.push(...extensionBlocks(bytes[at + 1] ?? 0, data, bytes.subarray(at + 14, next)));
      at = next;
    } else if (bytes[at] === image) {
      at = subBlocks(bytes, at + 11 + colourTableBytes(bytes[at + 9] ?? 0)).next;
    } else {
      break;
    }
  }
  const rest = bytes.subarray(at + 1);
  return rest.some((byte) => byte !== 0) ? [...blocks, { kind: 'appended', bytes: rest }] : blocks;
}

function extensionBlocks(label: number, data: Uint8Array, raw: Uint8Array): MetadataBlock[] {
  if (label === 0xfe) return [{ kind: 'field', field: { name: 'Comment', value: latin1(data) } }];
  if (label !== 0xff) return [];
  const application = latin1(data.subarray(0, 11));
  // XMP is written without sub-block sizes, so that it is read as it lies in the file.
  if (application === 'XMP DataXMP') return [{ kind: 'xmp', text: new TextDecoder().decode(raw) }];
  return ['NETSCAPE2.0', 'ANIMEXTS1.0', 'ICCRGBG1012'].includes(application)
    ? []
    : [{ kind: 'other', name: application }];
}

function colourTableBytes(flags: number): number {
  return flags & 0x80 ? 3 * 2 ** ((flags & 7) + 1) : 0;
}

function subBlocks(bytes: Uint8Array, start: number): { data: Uint8Array; next: number } {
  const parts: number[] = [];
  let at = start;
  for (let size = bytes[at] ?? 0; size > 0; size = bytes[at] ?? 0) {
    for (const byte of bytes.subarray(at + 1, at + 1 + size)) parts.push(byte);
    at += 1 + size;
  }
  return { data: Uint8Array.from(parts), next: at + 1 };
}
