import { describe, expect, test } from 'vitest';
import { box, joined, latin, uint16, uint32 } from '../../tests/outside/pictureBytes.ts';
import { readMovie } from './readMovie.ts';

const fixed = (value: number) => uint32(value * 65536);
const upright = [65536, 0, 0, 0, 65536, 0, 0, 0, 0x40000000];
const quarterTurn = [0, 65536, 0, 0xffff0000, 0, 0, 0, 0, 0x40000000];
const trackHeader = (width: number, height: number, matrix = upright) =>
  box('tkhd', new Uint8Array(40), ...matrix.map(uint32), fixed(width), fixed(height));
const movieHeader = (seconds: number) => box('mvhd', uint32(0), uint32(seconds), new Uint8Array(92));
const handler = box('hdlr', uint32(0), uint32(0), 'mdta', new Uint8Array(13));
const key = (name: string) => joined(uint32(name.length + 8), 'mdta', name);
const item = (index: number, value: string) =>
  joined(uint32(8 + 16 + value.length), uint32(index), box('data', uint32(1), uint32(0), value));
const keyed = (entries: Record<string, string>) =>
  box(
    'meta',
    handler,
    box('keys', uint32(0), uint32(Object.keys(entries).length), ...Object.keys(entries).map(key)),
    box('ilst', ...Object.values(entries).map((value, i) => item(i + 1, value))),
  );

const fieldsOf = (bytes: Uint8Array) =>
  readMovie(bytes).blocks.flatMap((block) => (block.kind === 'field' ? [block.field] : []));

describe('size', () => {
  test('is that of the track with a picture', () => {
    const movie = box('moov', box('trak', trackHeader(0, 0)), box('trak', trackHeader(1920, 1080)));
    expect(readMovie(movie)).toMatchObject({ width: 1920, height: 1080 });
  });

  test('is upright when the matrix turns the picture', () => {
    const movie = box('moov', box('trak', trackHeader(1920, 1080, quarterTurn)));
    expect(readMovie(movie)).toMatchObject({ width: 1080, height: 1920 });
  });

  test('is not known without tracks', () => {
    expect(readMovie(box('moov'))).toEqual({ width: null, height: null, createdAt: null, blocks: [] });
  });
});

describe('time', () => {
  test('counts seconds from 1904 (QuickTime File Format; 2082844800 s to 1970)', () => {
    expect(readMovie(box('moov', movieHeader(2_082_844_800 + 1_772_600_767))).createdAt).toBe('2026-03-04T05:06:07Z');
  });

  test('is not known where a program wrote zero', () => {
    expect(readMovie(box('moov', movieHeader(0))).createdAt).toBeNull();
  });
});

describe('fields', () => {
  test('are read from metadata with keys, in both forms of the box', () => {
    const entries = { 'com.apple.quicktime.location.ISO6709': '+51.5-000.1/', 'com.apple.quicktime.make': 'Lintel' };
    const expected = Object.entries(entries).map(([name, value]) => ({ name, value }));
    expect(fieldsOf(box('moov', keyed(entries)))).toEqual(expected);
    const plain = keyed(entries);
    const full = box('meta', uint32(0), plain.subarray(8));
    expect(fieldsOf(box('moov', full))).toEqual(expected);
  });

  test('are read from user data', () => {
    const place = '+51.5074-000.1278/';
    const user = box(
      'udta',
      box('\xa9xyz', uint16(place.length), uint16(0), place),
      box('\xa9mod', uint16(3), uint16(0), 'One'),
    );
    expect(fieldsOf(box('moov', user))).toEqual([
      { name: '\xa9xyz', value: place },
      { name: '\xa9mod', value: 'One' },
    ]);
  });

  test('hold the place of a 3GPP location box', () => {
    const location = box('loci', uint32(0), uint16(0), 'bench\0', '\0', fixed(12.5), fixed(51.25), fixed(0), '\0\0');
    expect(fieldsOf(box('moov', box('udta', location)))).toEqual([
      { name: 'GPSCoordinates', value: '+51.25000+12.50000/' },
    ]);
  });

  test('are found behind media data whose size takes 64 bits', () => {
    const media = joined(uint32(1), 'mdat', uint32(0), uint32(20), 'data');
    const moov = box('moov', keyed({ 'com.apple.quicktime.model': 'One' }));
    expect(fieldsOf(joined(media, moov))).toEqual([{ name: 'com.apple.quicktime.model', value: 'One' }]);
  });

  test('name a track that logs a sensor', () => {
    const description = box('stsd', uint32(0), uint32(1), box('gpmd', new Uint8Array(8)));
    const track = box('trak', box('mdia', box('minf', box('stbl', description))));
    expect(fieldsOf(box('moov', track))).toEqual([{ name: 'SensorTrack', value: 'present' }]);
  });
});

test('an XMP packet is read from its own box', () => {
  const id = latin('\xbe\x7a\xcf\xcb\x97\xa9\x42\xe8\x9c\x71\x99\x94\x91\xe3\xaf\xac');
  expect(readMovie(box('uuid', id, '<x:xmpmeta/>')).blocks).toEqual([{ kind: 'xmp', text: '<x:xmpmeta/>' }]);
});

test('boxes that are cut off or lie about their size end the reading quietly', () => {
  const movie = box('moov', keyed({ 'com.apple.quicktime.model': 'One' }), box('trak', trackHeader(4, 3)));
  for (let length = 0; length < movie.length; length++) {
    expect(() => readMovie(movie.subarray(0, length))).not.toThrow();
  }
  expect(() => readMovie(joined(uint32(0xffffffff), 'moov', 'x'))).not.toThrow();
  expect(() => readMovie(joined(uint32(3), 'moov'))).not.toThrow();
});
