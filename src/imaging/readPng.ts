import { type MetadataBlock, zeroTerminated } from './metadataBlock.ts';
import { pngChunks } from './pngChunks.ts';
import { readPhotoshop } from './readPhotoshop.ts';

/** What a PNG file holds besides the picture: Exif, texts, and what comes after its end (ISO/IEC 15948 11.3). */
export function readPng(bytes: Uint8Array): MetadataBlock[] {
  const { chunks, end } = pngChunks(bytes);
  const blocks = chunks.flatMap(({ type, data }) => {
    switch (type) {
      case 'eXIf':
        return [{ kind: 'exif', tiff: data } as const];
      case 'tEXt':
        return plainText(data);
      case 'zTXt':
        return deflatedText(data);
      case 'iTXt':
        return internationalText(data);
      default:
        return [];
    }
  });
  const rest = end === null ? new Uint8Array() : bytes.subarray(end);
  return rest.some((byte) => byte !== 0) ? [...blocks, { kind: 'appended', bytes: rest }] : blocks;
}

function plainText(data: Uint8Array): MetadataBlock[] {
  const keyword = zeroTerminated(data, 0);
  return textBlocks(keyword.text, new TextDecoder().decode(data.subarray(keyword.next)));
}

function deflatedText(data: Uint8Array): MetadataBlock[] {
  const keyword = zeroTerminated(data, 0);
  return [{ kind: 'deflated', name: keyword.text, bytes: data.subarray(keyword.next + 1) }];
}

function internationalText(data: Uint8Array): MetadataBlock[] {
  const keyword = zeroTerminated(data, 0);
  const isDeflated = data[keyword.next] === 1;
  const language = zeroTerminated(data, keyword.next + 2);
  const translated = zeroTerminated(data, language.next);
  const bytes = data.subarray(translated.next);
  if (isDeflated) return [{ kind: 'deflated', name: keyword.text, bytes }];
  return textBlocks(keyword.text, new TextDecoder().decode(bytes));
}

/** A PNG text by its keyword: an XMP packet, a profile in hexadecimal digits, or plain words. */
export function textBlocks(name: string, text: string): MetadataBlock[] {
  if (name === 'XML:com.adobe.xmp') return [{ kind: 'xmp', text }];
  const profile = /^Raw profile type (\w+)$/.exec(name)?.[1]?.toLowerCase();
  if (profile !== undefined) return profileBlocks(profile, text);
  return [{ kind: 'field', field: { name, value: text } }];
}

/** Profiles as image converters write them: a name, a length, then hexadecimal digits in lines (common practice). */
function profileBlocks(profile: string, text: string): MetadataBlock[] {
  const digits = /^\n?[^\n]*\n\s*\d+\n([0-9a-f\s]*)$/i.exec(text)?.[1]?.replaceAll(/\s/g, '');
  if (digits === undefined) return [{ kind: 'other', name: profile }];
  const bytes = new Uint8Array(digits.length >> 1).map((_, i) => Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16));
  const opening = new TextDecoder('latin1').decode(bytes.subarray(0, 29));
  if (opening.startsWith('Exif\0\0')) return [{ kind: 'exif', tiff: bytes.subarray(6) }];
  if (opening === 'http://ns.adobe.com/xap/1.0/\0') {
    return [{ kind: 'xmp', text: new TextDecoder().decode(bytes.subarray(29)) }];
  }
  if (profile === 'xmp') return [{ kind: 'xmp', text: new TextDecoder().decode(bytes) }];
  if (profile === 'iptc') return iptcBlocks(bytes, opening);
  if (/^(II\*\0|MM\0\*)/.test(opening)) return [{ kind: 'exif', tiff: bytes }];
  return profile === 'icc' || profile === 'icm' ? [] : [{ kind: 'other', name: profile }];
}

function iptcBlocks(bytes: Uint8Array, opening: string): MetadataBlock[] {
  return opening.startsWith('8BIM') ? readPhotoshop(bytes) : [{ kind: 'iptc', bytes }];
}
