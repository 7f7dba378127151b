import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  chunk,
  joined,
  latin,
  segment,
  tiff,
  uint16,
  uint32,
  withChunks,
  withSegments,
} from '../../tests/outside/pictureBytes.ts';
import { foreignParts } from './foreignParts.ts';
import { isCutOff } from './isCutOff.ts';
import { readGif } from './readGif.ts';
import { readIptc } from './readIptc.ts';
import { readJpeg } from './readJpeg.ts';
import { readPng } from './readPng.ts';
import { readSvg } from './readSvg.ts';
import { readWebp } from './readWebp.ts';

const blue = () => sharp({ create: { width: 40, height: 30, channels: 3, background: '#204080' } });
const pictures = {
  jpeg: new Uint8Array(),
  progressive: new Uint8Array(),
  png: new Uint8Array(),
  webp: new Uint8Array(),
  gif: new Uint8Array(),
};
const exif = tiff({ 271: 'Lintel' });
const xmp = '<x:xmpmeta xmlns:x="adobe:ns:meta/"/>';

beforeAll(async () => {
  pictures.jpeg = new Uint8Array(await blue().jpeg().toBuffer());
  pictures.progressive = new Uint8Array(await blue().jpeg({ progressive: true }).toBuffer());
  pictures.png = new Uint8Array(await blue().png().toBuffer());
  pictures.webp = new Uint8Array(await blue().webp().toBuffer());
  pictures.gif = new Uint8Array(await blue().gif().toBuffer());
});

const resource = (id: number, data: Uint8Array) =>
  joined('8BIM', uint16(id), '\0\0', uint32(data.length), data, data.length % 2 ? '\0' : '');
const iptc = joined(
  Uint8Array.of(0x1c, 2, 80),
  uint16(3),
  'Ada',
  Uint8Array.of(0x1c, 2, 0),
  uint16(2),
  '\0\x04',
  Uint8Array.of(0x1c, 2, 90),
  uint16(8),
  'Tidewick',
);

describe('a picture that a library wrote without metadata', () => {
  test('has none', () => {
    expect(readJpeg(pictures.jpeg)).toEqual([]);
    expect(readJpeg(pictures.progressive)).toEqual([]);
    expect(readPng(pictures.png)).toEqual([]);
    expect(readWebp(pictures.webp)).toEqual([]);
    expect(readGif(pictures.gif)).toEqual([]);
  });

  test('has no foreign parts and is whole', () => {
    for (const format of ['jpeg', 'png', 'webp'] as const) {
      expect(foreignParts(format, pictures[format])).toEqual([]);
      expect(isCutOff(format, pictures[format])).toBe(false);
    }
    expect(isCutOff('gif', pictures.gif)).toBe(false);
  });

  test('is known to be cut off wherever it ends too early', () => {
    for (const kind of ['jpeg', 'png', 'webp', 'gif'] as const) {
      const whole = pictures[kind];
      for (let length = 12; length < whole.length; length += 7) {
        expect(isCutOff(kind, whole.subarray(0, length)), `${kind} of ${length} bytes`).toBe(true);
      }
    }
  });
});

describe('a JPEG', () => {
  test.each<[string, Uint8Array, object]>([
    ['Exif', segment(0xe1, 'Exif\0\0', exif), { kind: 'exif', tiff: exif }],
    ['XMP', segment(0xe1, 'http://ns.adobe.com/xap/1.0/\0', xmp), { kind: 'xmp', text: xmp }],
    [
      'extended XMP',
      segment(0xe1, 'http://ns.adobe.com/xmp/extension/\0', 'x'.repeat(40), xmp),
      { kind: 'xmp', text: xmp },
    ],
    ['a comment', segment(0xfe, 'for Bo'), { kind: 'field', field: { name: 'Comment', value: 'for Bo' } }],
    [
      'IPTC',
      segment(0xed, 'Photoshop 3.0\0', resource(0x03ed, latin('res')), resource(0x0404, iptc)),
      { kind: 'iptc', bytes: iptc },
    ],
    [
      'a thumbnail of an editing program',
      segment(0xed, 'Photoshop 3.0\0', resource(0x040c, joined('h'.repeat(28), 'jpeg'))),
      { kind: 'preview', bytes: latin('jpeg') },
    ],
    [
      'a JFIF thumbnail',
      segment(0xe0, 'JFIF\0', '\x01\x02\0\0\x01\0\x01', '\x01\x01', 'rgb'),
      { kind: 'preview', bytes: null },
    ],
    ['an extension thumbnail', segment(0xe0, 'JFXX\0', '\x10', 'jpeg'), { kind: 'preview', bytes: latin('jpeg') }],
    ['several pictures', segment(0xe2, 'MPF\0', 'x'), { kind: 'preview', bytes: null }],
    ['data of an unknown program', segment(0xe7, 'Lintel data'), { kind: 'other', name: 'APP7' }],
  ])('with %s gives it back, and has a foreign part', (_, part, block) => {
    const picture = withSegments(pictures.jpeg, part);
    expect(readJpeg(picture)).toEqual([block]);
    expect(foreignParts('jpeg', picture)).not.toEqual([]);
  });

  test('with a colour profile has no foreign part', () => {
    const picture = withSegments(pictures.jpeg, segment(0xe2, 'ICC_PROFILE\0', '\x01\x01', 'profile'));
    expect(readJpeg(picture)).toEqual([]);
    expect(foreignParts('jpeg', picture)).toEqual([]);
  });

  test('followed by data gives them back; padding does not count, but is foreign', () => {
    const picture = joined(pictures.progressive, 'a clip');
    expect(readJpeg(picture)).toEqual([{ kind: 'appended', bytes: latin('a clip') }]);
    expect(foreignParts('jpeg', picture)).not.toEqual([]);
    expect(readJpeg(joined(pictures.jpeg, '\0\0\0'))).toEqual([]);
    expect(foreignParts('jpeg', joined(pictures.jpeg, '\0\0\0'))).not.toEqual([]);
  });

  test('with stray and fill bytes between segments is still read', () => {
    const part = segment(0xfe, 'note');
    expect(readJpeg(withSegments(pictures.jpeg, latin('\0\0'), latin('\xff\xff'), part))).toHaveLength(1);
  });
});

describe('a PNG', () => {
  const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex').replaceAll(/.{72}/g, '$&\n');
  test.each<[string, Uint8Array, object]>([
    ['Exif', chunk('eXIf', exif), { kind: 'exif', tiff: exif }],
    ['a text', chunk('tEXt', 'Author\0Ada'), { kind: 'field', field: { name: 'Author', value: 'Ada' } }],
    ['a deflated text', chunk('zTXt', 'Author\0\0zlib'), { kind: 'deflated', name: 'Author', bytes: latin('zlib') }],
    ['XMP', chunk('iTXt', 'XML:com.adobe.xmp\0\0\0\0\0', xmp), { kind: 'xmp', text: xmp }],
    [
      'an international text',
      chunk('iTXt', 'Title\0\0\0de\0Titel\0Lampe'),
      { kind: 'field', field: { name: 'Title', value: 'Lampe' } },
    ],
    [
      'a deflated international text',
      chunk('iTXt', 'Title\0\x01\0\0\0zlib'),
      { kind: 'deflated', name: 'Title', bytes: latin('zlib') },
    ],
    [
      'Exif in digits',
      chunk('tEXt', 'Raw profile type exif\0', `\nexif\n      ${exif.length + 6}\n${hex(joined('Exif\0\0', exif))}\n`),
      { kind: 'exif', tiff: exif },
    ],
    [
      'IPTC in digits',
      chunk('tEXt', 'Raw profile type iptc\0', `\niptc\n 9\n${hex(resource(0x0404, iptc))}`),
      { kind: 'iptc', bytes: iptc },
    ],
    [
      'XMP in digits',
      chunk(
        'tEXt',
        'Raw profile type APP1\0',
        `\ngeneric profile\n 9\n${hex(joined('http://ns.adobe.com/xap/1.0/\0', xmp))}`,
      ),
      { kind: 'xmp', text: xmp },
    ],
  ])('with %s gives it back, and has a foreign part', (_, part, block) => {
    const picture = withChunks(pictures.png, part);
    expect(readPng(picture)).toEqual([block]);
    expect(foreignParts('png', picture)).not.toEqual([]);
  });

  test('followed by data gives them back', () => {
    expect(readPng(joined(pictures.png, 'more'))).toEqual([{ kind: 'appended', bytes: latin('more') }]);
    expect(foreignParts('png', joined(pictures.png, 'more'))).not.toEqual([]);
  });
});

describe('a WebP', () => {
  const riff = (...chunks: [string, Uint8Array][]) => {
    const body = joined(
      'WEBP',
      ...chunks.flatMap(([type, data]) => [type, little(data.length), data, data.length % 2 ? '\0' : '']),
    );
    return joined('RIFF', little(body.length), body);
  };
  const little = (value: number) => uint32(value).reverse();

  test('with Exif, XMP and unknown chunks gives them back, and has foreign parts', () => {
    const picture = riff(
      ['VP8 ', latin('pix')],
      ['EXIF', joined('Exif\0\0', exif)],
      ['XMP ', latin(xmp)],
      ['LINT', latin('x')],
    );
    expect(readWebp(picture)).toEqual([
      { kind: 'exif', tiff: exif },
      { kind: 'xmp', text: xmp },
      { kind: 'other', name: 'LINT' },
    ]);
    expect(foreignParts('webp', picture)).toEqual(['EXIF', 'XMP ', 'LINT']);
  });

  test('followed by data gives them back', () => {
    expect(readWebp(joined(pictures.webp, 'more'))).toEqual([{ kind: 'appended', bytes: latin('more') }]);
    expect(foreignParts('webp', joined(pictures.webp, 'more'))).not.toEqual([]);
  });
});

describe('a GIF', () => {
  const extended = (extension: Uint8Array) => {
    const start = 13 + ((pictures.gif[10] ?? 0) & 0x80 ? 3 * 2 ** (((pictures.gif[10] ?? 0) & 7) + 1) : 0);
    return joined(pictures.gif.subarray(0, start), extension, pictures.gif.subarray(start));
  };

  test('with a comment, XMP or data of an unknown program gives them back', () => {
    const comment = joined('!\xfe', '\x05for B', '\x01o', '\0');
    expect(readGif(extended(comment))).toEqual([{ kind: 'field', field: { name: 'Comment', value: 'for Bo' } }]);
    const unknown = joined('!\xff', '\x0bLINTELPROG1', '\x01x', '\0');
    expect(readGif(extended(unknown))).toEqual([{ kind: 'other', name: 'LINTELPROG1' }]);
    const trailer = Uint8Array.from({ length: 258 }, (_, i) => (i === 0 ? 1 : i === 257 ? 0 : 256 - i));
    const found = readGif(extended(joined('!\xff', '\x0bXMP DataXMP', xmp, trailer)));
    expect(found).toEqual([{ kind: 'xmp', text: expect.stringContaining(xmp) }]);
  });

  test('followed by data gives them back', () => {
    expect(readGif(joined(pictures.gif, 'more'))).toEqual([{ kind: 'appended', bytes: latin('more') }]);
  });
});

test('IPTC data sets that say who and where are read, the others passed over', () => {
  expect(readIptc(iptc)).toEqual([
    { name: 'Creator', value: 'Ada' },
    { name: 'City', value: 'Tidewick' },
  ]);
});

test('a drawing gives its comments, stored paths and names', () => {
  const text = `<!-- drawn by Ada --><svg sodipodi:docname="lamp.svg" inkscape:export-filename="/home/ada/lamp.png"><title>Lamp</title><metadata><rdf:RDF><cc:Work><dc:creator><cc:Agent><dc:title>Ada</dc:title></cc:Agent></dc:creator></cc:Work></rdf:RDF></metadata><text>R1</text></svg>`;
  const fields = readSvg(text).map((block) => (block.kind === 'field' ? block.field : null));
  expect(fields).toContainEqual({ name: 'Comment', value: ' drawn by Ada ' });
  expect(fields).toContainEqual({ name: 'docname', value: 'lamp.svg' });
  expect(fields).toContainEqual({ name: 'export-filename', value: '/home/ada/lamp.png' });
  expect(fields).toContainEqual({ name: 'creator', value: 'Ada' });
  expect(fields).not.toContainEqual(expect.objectContaining({ value: 'R1' }));
});
