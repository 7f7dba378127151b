import ExifReader from 'exifreader';
import type { Field, MetadataBlock } from '#imaging/metadataBlock.ts';
import { readPhotoshop } from '#imaging/readPhotoshop.ts';

/** Fields of Exif data, and what else lies in its tags: previews, IPTC and resources of editing programs. */
export interface ExifContent {
  readonly fields: readonly Field[];
  readonly blocks: readonly MetadataBlock[];
}

/**
 * Reads a TIFF structure with Exif tags, or a whole TIFF or HEIC file. Throws where it cannot be understood.
 * The values stay inside this process: only names of groups leave it.
 */
export function readExif(bytes: Uint8Array): ExifContent {
  const tags = ExifReader.load(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), { expanded: true });
  const exif: Record<string, unknown> = { ...tags.exif };
  const preview = tags.Thumbnail?.image;
  const iptc = bytesOf(exif['IPTC-NAA']);
  const resources = bytesOf(exif.PhotoshopSettings);
  return {
    fields: Object.entries(exif).flatMap(([name, tag]) => fieldOf(name, tag)),
    blocks: [
      ...(preview ? [previewBlock(preview)] : []),
      ...(iptc ? [{ kind: 'iptc', bytes: iptc } as const] : []),
      ...(resources ? readPhotoshop(resources) : []),
    ],
  };
}

function previewBlock(image: ArrayBufferLike | Uint8Array): MetadataBlock {
  return { kind: 'preview', bytes: ArrayBuffer.isView(image) ? image : new Uint8Array(image) };
}

function bytesOf(tag: unknown): Uint8Array | null {
  const value = contentsOf(tag);
  return Array.isArray(value) ? Uint8Array.from(value) : null;
}

function fieldOf(name: string, tag: unknown): Field[] {
  if (Array.isArray(tag)) return tag.flatMap((one) => fieldOf(name, one));
  if (typeof tag !== 'object' || tag === null || !('description' in tag)) return [];
  // Cameras reserve room for notes and comments that they then leave empty.
  if (meaningfulPart(name, contentsOf(tag))?.every((byte) => byte === 0 || byte === 0x20)) return [];
  if (name === 'MakerNote') return [{ name, value: 'present' }];
  const text = typeof tag.description === 'string' ? tag.description : String(tag.description ?? '');
  return [{ name, value: text.replaceAll('\0', '') }];
}

function meaningfulPart(name: string, value: unknown): readonly unknown[] | null {
  if (!Array.isArray(value)) return null;
  // The first eight bytes of a comment name its character code (Exif 2.32 4.6.5, UserComment).
  if (name === 'UserComment') return value.slice(8);
  return name === 'MakerNote' ? value : null;
}

function contentsOf(tag: unknown): unknown {
  return typeof tag === 'object' && tag !== null && 'value' in tag ? tag.value : undefined;
}
