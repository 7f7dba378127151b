import { inflateSync } from 'node:zlib';
import type { ShotKind } from '#core/shot.ts';
import { kindOfBytes } from '#imaging/kindOfBytes.ts';
import { type Field, latin1, type MetadataBlock } from '#imaging/metadataBlock.ts';
import { readGif } from '#imaging/readGif.ts';
import { readIptc } from '#imaging/readIptc.ts';
import { readJpeg } from '#imaging/readJpeg.ts';
import { readMovie } from '#imaging/readMovie.ts';
import { readPng, textBlocks } from '#imaging/readPng.ts';
import { readSvg } from '#imaging/readSvg.ts';
import { readWebp } from '#imaging/readWebp.ts';
import { readXmp } from '#imaging/readXmp.ts';
import { readExif } from './readExif.ts';

/** Everything that a file says besides its pixels. */
export interface Metadata {
  /** Fields of the picture itself. */
  readonly fields: readonly Field[];
  /** Fields of the pictures and clips embedded in it. */
  readonly embedded: readonly Field[];
  /** Groups of private data that are told by their presence, not by a field. */
  readonly groups: ReadonlySet<string>;
}

/** Embedded pictures may embed others; real files go two deep. */
const maximumDepth = 3;
const maximumInflatedBytes = 16 << 20;

/** Collects the metadata of a picture or clip, embedded and appended ones included. */
export function collectMetadata(kind: ShotKind, bytes: Uint8Array): Metadata {
  const collector = new Collector();
  collector.addFile(kind, bytes, 0);
  return collector;
}

class Collector implements Metadata {
  readonly fields: Field[] = [];
  readonly embedded: Field[] = [];
  readonly groups = new Set<string>();

  addFile(kind: ShotKind, bytes: Uint8Array, depth: number): void {
    for (const block of blocksOf(kind, bytes)) this.addBlock(block, depth);
  }

  private addBlock(block: MetadataBlock, depth: number): void {
    switch (block.kind) {
      case 'exif':
        this.addExif(block.tiff, depth);
        break;
      case 'xmp':
        this.add(readXmp(block.text), depth);
        break;
      case 'iptc':
        this.add(readIptc(block.bytes), depth);
        break;
      case 'field':
        this.add([block.field], depth);
        break;
      case 'deflated':
        this.addDeflated(block.name, block.bytes, depth);
        break;
      case 'preview':
        this.groups.add('embedded preview');
        if (block.bytes) this.addEmbedded(block.bytes, depth);
        break;
      case 'appended':
        this.groups.add('appended data');
        this.addEmbedded(block.bytes, depth);
        break;
      case 'other':
        this.groups.add('other data');
        break;
    }
  }

  private add(fields: readonly Field[], depth: number): void {
    (depth === 0 ? this.fields : this.embedded).push(...fields);
  }

  private addExif(bytes: Uint8Array, depth: number): void {
    try {
      const { fields, blocks } = readExif(bytes);
      this.add(fields, depth);
      for (const block of blocks) this.addBlock(block, depth);
    } catch {
      // What cannot be read may still hold anything.
      this.groups.add('other data');
    }
  }

  private addDeflated(name: string, bytes: Uint8Array, depth: number): void {
    try {
      const text = inflateSync(bytes, { maxOutputLength: maximumInflatedBytes });
      for (const block of textBlocks(name, new TextDecoder().decode(text))) this.addBlock(block, depth);
    } catch {
      this.groups.add('other data');
    }
  }

  private addEmbedded(bytes: Uint8Array, depth: number): void {
    if (depth + 1 >= maximumDepth) return;
    for (const start of picturesIn(bytes)) {
      const inner = bytes.subarray(start);
      const kind = kindOfBytes(inner.subarray(0, 64));
      if (kind) this.addFile(kind, inner, depth + 1);
    }
  }
}

function blocksOf(kind: ShotKind, bytes: Uint8Array): readonly MetadataBlock[] {
  switch (kind) {
    case 'jpeg':
      return readJpeg(bytes);
    case 'png':
      return readPng(bytes);
    case 'webp':
      return readWebp(bytes);
    case 'gif':
      return readGif(bytes);
    case 'svg':
      return readSvg(new TextDecoder().decode(bytes));
    case 'clip':
      return readMovie(bytes).blocks;
    case 'tiff':
    case 'heic':
      return [{ kind: 'exif', tiff: bytes }, ...packetsIn(bytes)];
  }
}

/** XMP packets wherever they lie: the containers of TIFF and HEIC may put them anywhere. */
function packetsIn(bytes: Uint8Array): MetadataBlock[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const blocks: MetadataBlock[] = [];
  for (let at = buffer.indexOf('<x:xmpmeta'); at !== -1; ) {
    const end = buffer.indexOf('</x:xmpmeta', at);
    blocks.push({ kind: 'xmp', text: buffer.toString('utf8', at, end === -1 ? buffer.length : end) });
    at = end === -1 ? -1 : buffer.indexOf('<x:xmpmeta', end);
  }
  return blocks;
}

/** Where pictures or clips may begin in data that follows a picture: at most a few are looked at. */
function picturesIn(bytes: Uint8Array): number[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const starts: number[] = [];
  for (let at = buffer.indexOf(jpegStart); at !== -1 && starts.length < 8; at = buffer.indexOf(jpegStart, at + 3)) {
    starts.push(at);
  }
  const brand = buffer.indexOf('ftyp', 4);
  if (brand !== -1) starts.push(brand - 4);
  return latin1(bytes.subarray(4, 8)) === 'ftyp' ? [0, ...starts] : starts;
}

const jpegStart = Buffer.from([0xff, 0xd8, 0xff]);
