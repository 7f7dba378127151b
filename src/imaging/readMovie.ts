import { boxesAt, boxesIn, type MovieBox } from './boxes.ts';
import { type Field, latin1, type MetadataBlock, viewOf } from './metadataBlock.ts';

/** Facts of a clip's header. Sizes in pixels, upright; null where it does not tell. */
export interface MovieFacts {
  readonly width: number | null;
  readonly height: number | null;
  /** ISO 8601 instant; null for the zero that many programs write. */
  readonly createdAt: string | null;
  readonly blocks: readonly MetadataBlock[];
}

/**
 * Reads the boxes of an MP4 or QuickTime file that say what was filmed when, where and with what: `bytes` may
 * leave out the media data (ISO/IEC 14496-12 8; QuickTime File Format, user data and metadata atoms).
 */
export function readMovie(bytes: Uint8Array): MovieFacts {
  const top = boxesIn(bytes);
  const movie = boxesAt(top, 'moov').flatMap(({ data }) => boxesIn(data));
  const tracks = movie.filter(({ type }) => type === 'trak').map(({ data }) => boxesIn(data));
  const places = [top, movie, ...tracks];
  return {
    ...sizeOf(tracks),
    createdAt: creationOf(movie),
    blocks: [...places.flatMap(userBlocks), ...tracks.flatMap(sensorBlocks)],
  };
}

function userBlocks(boxes: readonly MovieBox[]): MetadataBlock[] {
  return boxes.flatMap(({ type, data }): MetadataBlock[] => {
    switch (type) {
      case 'udta':
        return boxesIn(data).flatMap(userDataBlocks);
      case 'meta':
        return keyedBlocks(data);
      case 'uuid':
        return latin1(data.subarray(0, 16)) === xmpId ? [xmpBlock(data.subarray(16))] : [{ kind: 'other', name: type }];
      default:
        return [];
    }
  });
}

/** BE7ACFCB-97A9-42E8-9C71-999491E3AFAC (XMP part 3, 1.1.9). */
const xmpId = '\xbe\x7a\xcf\xcb\x97\xa9\x42\xe8\x9c\x71\x99\x94\x91\xe3\xaf\xac';

function xmpBlock(bytes: Uint8Array): MetadataBlock {
  return { kind: 'xmp', text: new TextDecoder().decode(bytes) };
}

function userDataBlocks({ type, data }: MovieBox): MetadataBlock[] {
  if (type === 'meta') return keyedBlocks(data);
  if (type === 'XMP_') return [xmpBlock(data)];
  if (type === 'loci') return field('GPSCoordinates', locationOf(data));
  if (type === 'auth' || type === 'cprt' || type === 'titl' || type === 'dscp') {
    return field(type, text(data.subarray(6)));
  }
  if (type.startsWith('\xa9')) return field(type, internationalText(data));
  return [];
}

/** Text behind its own length and language code. */
function internationalText(data: Uint8Array): string {
  if (data.length < 4) return '';
  const size = viewOf(data).getUint16(0);
  return text(data.subarray(4, 4 + size));
}

/** Latitude and longitude of a 3GPP location box as ISO 6709 (3GPP TS 26.244 8.3). */
function locationOf(data: Uint8Array): string {
  const zero = data.indexOf(0, 6);
  if (zero === -1 || data.length < zero + 10) return '';
  const view = viewOf(data);
  const degrees = (at: number) => view.getInt32(at) / 65536;
  const signed = (value: number) => (value < 0 ? '' : '+') + value.toFixed(5);
  return `${signed(degrees(zero + 6))}${signed(degrees(zero + 2))}/`;
}

/** Items of a metadata box, named by its list of keys or by their own types. */
function keyedBlocks(data: Uint8Array): MetadataBlock[] {
  // QuickTime leaves out the version and flags that ISO files have.
  const boxes = boxesIn(latin1(data.subarray(4, 8)) === 'hdlr' ? data : data.subarray(4));
  const keys = boxes.filter(({ type }) => type === 'keys').flatMap(({ data }) => keyNames(data));
  const items = boxesAt(boxes, 'ilst').flatMap(({ data }) => boxesIn(data));
  const found = items.flatMap(({ type, data }) => {
    const index = viewOf(Uint8Array.from(type, (letter) => letter.charCodeAt(0))).getUint32(0);
    const name = keys[index - 1] ?? type;
    return boxesAt(boxesIn(data), 'data').flatMap((value) => field(name, text(value.data.subarray(8))));
  });
  return [...found, ...boxes.filter(({ type }) => type === 'uuid').flatMap((box) => userBlocks([box]))];
}

function keyNames(data: Uint8Array): string[] {
  return boxesIn(data.subarray(8)).map((key) => text(key.data));
}

/** Tracks that log a sensor, a position receiver among them (common practice: `gpmd`, `camm`, `rtmd`). */
function sensorBlocks(track: readonly MovieBox[]): MetadataBlock[] {
  return boxesAt(track, 'mdia/minf/stbl/stsd').flatMap(({ data }) =>
    boxesIn(data.subarray(8))
      .filter(({ type }) => ['gpmd', 'camm', 'rtmd'].includes(type))
      .map(() => ({ kind: 'field', field: { name: 'SensorTrack', value: 'present' } }) as const),
  );
}

function field(name: string, value: string): MetadataBlock[] {
  const result: Field = { name, value };
  return value === '' ? [] : [{ kind: 'field', field: result }];
}

function text(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes).replace(/\0+$/, '');
}

function sizeOf(tracks: readonly (readonly MovieBox[])[]): { width: number | null; height: number | null } {
  for (const { data } of tracks.flatMap((track) => track.filter(({ type }) => type === 'tkhd'))) {
    const start = data[0] === 1 ? 52 : 40;
    if (data.length < start + 44) continue;
    const view = viewOf(data);
    const width = view.getUint32(start + 36) / 65536;
    const height = view.getUint32(start + 40) / 65536;
    if (width === 0 || height === 0) continue;
    // A quarter turn puts zero on the diagonal of the matrix.
    const turned = view.getInt32(start) === 0;
    return turned ? { width: height, height: width } : { width, height };
  }
  return { width: null, height: null };
}

/** Seconds from 1904 to 1970: both clocks count without leap seconds. */
const macEpoch = 2_082_844_800;

function creationOf(movie: readonly MovieBox[]): string | null {
  const header = movie.find(({ type }) => type === 'mvhd')?.data;
  if (!header || header.length < 12) return null;
  const view = viewOf(header);
  const seconds = header[0] === 1 ? Number(view.getBigUint64(4)) : view.getUint32(4);
  const unix = seconds - macEpoch;
  if (unix <= 0 || unix > 4_102_444_800) return null;
  return new Date(unix * 1000).toISOString().replace('.000Z', 'Z');
}
