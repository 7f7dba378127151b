import ExifReader from 'exifreader';
import type { Field } from '#imaging/metadataBlock.ts';

/** Fields of Exif and IPTC data, and the pictures embedded in them. */
export interface ExifContent {
  readonly fields: readonly Field[];
  readonly previews: readonly Uint8Array[];
}

/**
 * Reads a TIFF structure with Exif tags, or a whole TIFF or HEIC file. Throws where it cannot be understood.
 * The values stay inside this process: only names of groups leave it.
 */
export function readExif(bytes: Uint8Array): ExifContent {
  const tags = ExifReader.load(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), { expanded: true });
  const previews = [tags.Thumbnail?.image].filter((image) => image !== undefined);
  const named = Object.entries({ ...tags.iptc, ...tags.exif });
  return {
    fields: named.flatMap(([name, tag]) => fieldOf(name, tag)),
    previews: previews.map((image) => (ArrayBuffer.isView(image) ? image : new Uint8Array(image))),
  };
}

function fieldOf(name: string, tag: unknown): Field[] {
  if (Array.isArray(tag)) return tag.flatMap((one) => fieldOf(name, one));
  if (typeof tag !== 'object' || tag === null || !('description' in tag)) return [];
  const value: unknown = 'value' in tag ? tag.value : undefined;
  const bytes = name === 'MakerNote' || name === 'UserComment' ? valueBytes(name, value) : null;
  // Cameras reserve room for notes and comments that they then leave empty.
  if (bytes?.every((byte) => byte === 0 || byte === 0x20)) return [];
  if (name === 'MakerNote') return [{ name, value: 'present' }];
  const text = typeof tag.description === 'string' ? tag.description : String(tag.description ?? '');
  return [{ name, value: text.replaceAll('\0', '') }];
}

function valueBytes(name: string, value: unknown): readonly unknown[] | null {
  if (!Array.isArray(value)) return null;
  // The first eight bytes of a comment name its character code (Exif 2.32 4.6.5, UserComment).
  return name === 'UserComment' ? value.slice(8) : value;
}
