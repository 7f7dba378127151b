import { jpegSegments } from './jpegSegments.ts';
import { latin1, type MetadataBlock, viewOf } from './metadataBlock.ts';
import { readPhotoshop } from './readPhotoshop.ts';

const app0 = 0xe0;
const comment = 0xfe;

/** What a JPEG file holds besides the picture (segments by JFIF 1.02, Exif 2.32 4.7, XMP part 3 1.1.3, CIPA DC-007). */
export function readJpeg(bytes: Uint8Array): MetadataBlock[] {
  const { segments, end } = jpegSegments(bytes);
  const blocks: MetadataBlock[] = [];
  const extended: Uint8Array[] = [];
  for (const { marker, data } of segments) {
    if (marker === comment) {
      blocks.push({ kind: 'field', field: { name: 'Comment', value: latin1(data) } });
    } else if (marker >= app0 && marker <= 0xef) {
      const part = startsWith(data, extendedXmp);
      if (part) extended.push(part.subarray(extendedXmpHeader));
      else blocks.push(...applicationBlocks(marker, data));
    }
  }
  if (extended.length > 0) blocks.push({ kind: 'xmp', text: joinedText(extended) });
  const rest = end === null ? new Uint8Array() : bytes.subarray(end);
  if (rest.some((byte) => byte !== 0)) blocks.push({ kind: 'appended', bytes: rest });
  return blocks;
}

const extendedXmp = 'http://ns.adobe.com/xmp/extension/\0';
/** Digest, full length and offset come before the text. */
const extendedXmpHeader = 40;

function applicationBlocks(marker: number, data: Uint8Array): MetadataBlock[] {
  const exif = startsWith(data, 'Exif\0');
  if (exif) return [{ kind: 'exif', tiff: exif.subarray(1) }];
  const xmp = startsWith(data, 'http://ns.adobe.com/xap/1.0/\0');
  if (xmp) return [{ kind: 'xmp', text: new TextDecoder().decode(xmp) }];
  const photoshop = startsWith(data, 'Photoshop 3.0\0');
  if (photoshop) return readPhotoshop(photoshop);
  const jfif = startsWith(data, 'JFIF\0');
  if (jfif) return jfifThumbnail(jfif);
  if (startsWith(data, 'JFXX\0')) return [{ kind: 'preview', bytes: data.subarray(6) }];
  if (startsWith(data, 'MPF\0')) return [{ kind: 'preview', bytes: null }];
  if (startsWith(data, 'ICC_PROFILE\0') || startsWith(data, 'Adobe')) return [];
  return data.length > 0 ? [{ kind: 'other', name: `APP${marker - app0}` }] : [];
}

function jfifThumbnail(data: Uint8Array): MetadataBlock[] {
  if (data.length < 9) return [];
  const view = viewOf(data);
  return view.getUint8(7) * view.getUint8(8) > 0 ? [{ kind: 'preview', bytes: null }] : [];
}

function startsWith(data: Uint8Array, name: string): Uint8Array | null {
  return latin1(data.subarray(0, name.length)) === name ? data.subarray(name.length) : null;
}

function joinedText(parts: readonly Uint8Array[]): string {
  const decoder = new TextDecoder();
  return parts.map((part) => decoder.decode(part, { stream: true })).join('') + decoder.decode();
}
