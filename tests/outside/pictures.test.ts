import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, test } from 'vitest';
import type { AssetWant } from '#core/shot.ts';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { openPictures } from '#outside/pictures/openPictures.ts';
import {
  box,
  chunk,
  gps,
  joined,
  latin,
  segment,
  tiff,
  uint16,
  uint32,
  withChunks,
  withSegments,
} from './pictureBytes.ts';
import { screenProfile } from './screenProfile.ts';

const size = { width: 64, height: 48 };
const formats = ['jpeg', 'png', 'webp'] as const;

/** Four quarters of different colours: red and green above, blue and white below. */
function quarters({ width, height } = size): Sharp {
  const pixels = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) {
    const right = i % width >= width / 2;
    const below = i >= (width * height) / 2;
    pixels.set(below ? (right ? [250, 250, 250] : [10, 10, 250]) : right ? [10, 200, 10] : [250, 10, 10], 3 * i);
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

const bytesOf = async (image: Sharp) => new Uint8Array(await image.toBuffer());
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

async function inspect(bytes: Uint8Array, path = 'photo.jpg') {
  const folder = memoryFolder({ [path]: bytes });
  const pictures = await openPictures(folder, memoryCache());
  const result = await pictures.inspect(path);
  expect(sha256(await folder.read(path)), 'the original is as it was').toBe(sha256(bytes));
  return result;
}

async function clean(bytes: Uint8Array, want: Partial<AssetWant> = {}) {
  const folder = memoryFolder({ 'photo.jpg': bytes });
  const pictures = await openPictures(folder, memoryCache());
  const result = await pictures.clean({ shot: 'photo.jpg', width: 64, format: 'jpeg', ...want }, 'photo-64');
  expect(sha256(await folder.read('photo.jpg')), 'the original is as it was').toBe(sha256(bytes));
  return result;
}

async function cleaned(bytes: Uint8Array, want: Partial<AssetWant> = {}) {
  const result = await clean(bytes, want);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
}

/** Colours in the middle of the four quarters, left to right, top to bottom, as names. */
async function coloursOf(data: Uint8Array): Promise<string[]> {
  const { data: pixels, info } = await sharp(data)
    .removeAlpha()
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return [
    [0.25, 0.25],
    [0.75, 0.25],
    [0.25, 0.75],
    [0.75, 0.75],
  ].map(([x = 0, y = 0]) => {
    const at = 3 * (Math.floor(y * info.height) * info.width + Math.floor(x * info.width));
    const bright = [...pixels.subarray(at, at + 3)].map((value) => value > 128);
    return (
      { 'true,false,false': 'red', 'false,true,false': 'green', 'false,false,true': 'blue', 'true,true,true': 'white' }[
        String(bright)
      ] ?? `${bright}`
    );
  });
}

describe('inspecting', () => {
  test('tells kind, upright size, hash, time, camera and what the file gives away', async () => {
    const exif = tiff({
      271: 'Lintel',
      272: 'One',
      274: new Uint8Array([0, 6, 0, 0]),
      34665: { 36867: '2026:03:04 05:06:07', 36881: '+02:00', 42033: 'SN-77' },
      34853: gps([51, 30, 0], [0, 7, 12]),
    });
    // The orientation is a SHORT, which the small writer has no form for: its type is set by hand.
    const orientation = Buffer.from(exif).indexOf(Buffer.from([0x01, 0x12, 0, 7]));
    exif.set([0x01, 0x12, 0, 3, 0, 0, 0, 1], orientation);
    const photo = withSegments(await bytesOf(quarters().jpeg()), segment(0xe1, 'Exif\0\0', exif));
    expect(await inspect(photo)).toEqual({
      ok: true,
      value: {
        hash: sha256(photo),
        bytes: photo.length,
        kind: 'jpeg',
        width: 48,
        height: 64,
        takenAt: '2026-03-04T05:06:07+02:00',
        camera: 'Lintel One',
        leaks: { position: true, fields: ['position', 'serial number'] },
      },
    });
  });

  test('goes by the bytes, not by the name', async () => {
    const result = await inspect(await bytesOf(quarters().png()), 'photo.jpg');
    expect(result).toMatchObject({ ok: true, value: { kind: 'png', ...size } });
  });

  test('finds no leak in an empty or zero block of positions', async () => {
    const photo = await bytesOf(quarters().jpeg());
    for (const block of [
      { 0: new Uint8Array([2, 3, 0, 0]) },
      gps([0, 0, 0], [0, 0, 0]),
      { 1: 'N', 2: [[0, 0]] as const },
    ]) {
      const empty = withSegments(photo, segment(0xe1, 'Exif\0\0', tiff({ 34853: block })));
      expect(await inspect(empty)).toMatchObject({ ok: true, value: { leaks: { position: false, fields: [] } } });
    }
  });

  const placed = tiff({ 34853: gps([51, 30, 0], [0, 7, 12]) });
  const placedXmp =
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:Description exif:GPSLatitude="51,30N" exif:GPSLongitude="0,7.2W"/></x:xmpmeta>';
  const placedJpeg = async () => withSegments(await bytesOf(quarters().jpeg()), segment(0xe1, 'Exif\0\0', placed));
  test.each<[string, () => Promise<Uint8Array>]>([
    ['Exif of a JPEG', placedJpeg],
    [
      'a second Exif block',
      async () =>
        withSegments(
          await bytesOf(quarters().jpeg()),
          segment(0xe1, 'Exif\0\0', tiff({ 271: 'x' })),
          segment(0xe1, 'Exif\0\0', placed),
        ),
    ],
    [
      'XMP of a JPEG',
      async () =>
        withSegments(await bytesOf(quarters().jpeg()), segment(0xe1, 'http://ns.adobe.com/xap/1.0/\0', placedXmp)),
    ],
    ['Exif of a PNG', async () => withChunks(await bytesOf(quarters().png()), chunk('eXIf', placed))],
    [
      'XMP of a PNG',
      async () => withChunks(await bytesOf(quarters().png()), chunk('iTXt', 'XML:com.adobe.xmp\0\0\0\0\0', placedXmp)),
    ],
    [
      'Exif in digits of a PNG, deflated',
      async () => {
        const digits = `\nexif\n ${placed.length}\n${Buffer.from(placed).toString('hex')}\n`;
        return withChunks(
          await bytesOf(quarters().png()),
          chunk('zTXt', 'Raw profile type exif\0\0', new Uint8Array(deflateSync(digits))),
        );
      },
    ],
    [
      'a preview in the Exif of a JPEG',
      async () => {
        const preview = await placedJpeg();
        const thumbnail = { 259: 6, 513: 0, 514: preview.length };
        const block = joined('MM\0*', uint32(8), uint16(0), uint32(14), directoryWithThumbnail(thumbnail, preview));
        return withSegments(await bytesOf(quarters().jpeg()), segment(0xe1, 'Exif\0\0', block));
      },
    ],
    ['a picture after the end', async () => joined(await bytesOf(quarters().jpeg()), await placedJpeg())],
    [
      'a clip after the end',
      async () => {
        const place = '+51.5-000.12/';
        const clip = joined(
          box('ftyp', 'mp42\0\0\0\0isom'),
          box('moov', box('udta', box('\xa9xyz', uint16(place.length), uint16(0), place))),
        );
        return joined(await bytesOf(quarters().jpeg()), clip);
      },
    ],
    ['Exif of a TIFF', async () => placed],
  ])('finds a position in %s', async (name, make) => {
    const result = await inspect(await make());
    // A TIFF without a picture cannot be measured; its tags are what the test of the tool against the tool sees.
    if (name === 'Exif of a TIFF') expect(result).toMatchObject({ ok: false });
    else expect(result).toMatchObject({ ok: true, value: { leaks: { position: true } } });
  });

  test.each(['jpeg', 'png', 'webp', 'gif', 'tiff'] as const)('measures a %s of one pixel', async (format) => {
    const result = await inspect(await bytesOf(quarters({ width: 1, height: 1 }).toFormat(format)));
    expect(result).toMatchObject({ ok: true, value: { kind: format, width: 1, height: 1, leaks: { fields: [] } } });
  });

  test('takes further pages of a TIFF for embedded previews', async () => {
    const one = Buffer.from(await bytesOf(quarters().tiff()));
    const directory = one.readUInt32LE(4);
    const size = 2 + 12 * one.readUInt16LE(directory) + 4;
    const two = Buffer.concat([one, one.subarray(directory, directory + size)]);
    two.writeUInt32LE(one.length, directory + size - 4);
    expect(await inspect(one)).toMatchObject({ ok: true, value: { leaks: { fields: [] } } });
    expect(await inspect(two)).toMatchObject({ ok: true, value: { leaks: { fields: ['embedded preview'] } } });
  });

  test('reads a clip without its media', async () => {
    const header = box(
      'tkhd',
      new Uint8Array(40),
      uint32(65536),
      new Uint8Array(32),
      uint32(1920 << 16),
      uint32(1080 << 16),
    );
    const clip = joined(
      box('ftyp', 'qt  \0\0\0\0qt  '),
      box('mdat', new Uint8Array(1000)),
      box('moov', box('trak', header)),
    );
    const result = await inspect(clip, 'IMG_1.MOV');
    expect(result).toMatchObject({
      ok: true,
      value: { kind: 'clip', width: 1920, height: 1080, hash: sha256(clip), bytes: clip.length },
    });
  });
});

function directoryWithThumbnail(tags: Record<number, number>, preview: Uint8Array): Uint8Array {
  const entries = Object.entries(tags);
  const start = 14 + 2 + 12 * entries.length + 4;
  return joined(
    uint16(entries.length),
    ...entries.map(([tag, value]) =>
      joined(uint16(Number(tag)), uint16(4), uint32(1), uint32(Number(tag) === 0x0201 ? start : value)),
    ),
    uint32(0),
    preview,
  );
}

describe('a bad file gives a reason, and the rest goes on', () => {
  const huge = (width: number, height: number) => {
    const header = chunk('IHDR', uint32(width), uint32(height), Uint8Array.of(8, 2, 0, 0, 0));
    return joined('\x89PNG\r\n\x1a\n', header, chunk('IDAT', 'x'), chunk('IEND'));
  };
  test.each<[string, Uint8Array, RegExp]>([
    ['empty', new Uint8Array(), /empty/],
    ['text', latin('# Guide'), /no picture/],
    ['a page', latin('<!DOCTYPE html><html><body><svg/></body></html>'), /no picture/],
    ['a header without a picture', latin('\xff\xd8\xff\xe0'), /cut off/],
    ['wider than any camera makes', huge(200_000, 3), /no camera/],
    ['a header that asks for all memory', huge(2_000_000_000, 2_000_000_000), /damaged/],
    ['a header with noise behind it', joined('\x89PNG\r\n\x1a\n', 'noise'.repeat(20)), /cut off|damaged/],
  ])('%s', async (_, bytes, reason) => {
    const inspected = await inspect(bytes);
    expect(inspected.ok ? '' : inspected.reason).toMatch(reason);
    const copy = await clean(bytes);
    expect(copy.ok ? '' : copy.reason).toMatch(/\.$/);
  });

  test('more than 100 megapixels are refused from the header alone', async () => {
    const started = performance.now();
    const result = await clean(huge(20_000, 20_000));
    expect(result.ok ? '' : result.reason).toMatch(/400 megapixels; at most 100/);
    expect(performance.now() - started).toBeLessThan(2000);
    expect(await inspect(huge(20_000, 20_000))).toMatchObject({ ok: true, value: { width: 20_000, height: 20_000 } });
  });

  test.each(['jpeg', 'png', 'webp', 'gif'] as const)('a %s that is cut off', async (format) => {
    const whole = await bytesOf(quarters({ width: 400, height: 300 }).toFormat(format));
    for (const part of [0.5, 0.9, 0.99]) {
      const result = await clean(whole.subarray(0, Math.floor(whole.length * part)));
      expect(result.ok ? '' : result.reason, `${part} of it`).toMatch(/cut off/);
    }
  });

  test('an AVIF, in the container of HEIC, is decoded', async () => {
    const avif = await bytesOf(quarters().avif({ effort: 0 }));
    expect(await coloursOf((await cleaned(avif)).data)).toEqual(['red', 'green', 'blue', 'white']);
  });

  test('a clip is no picture', async () => {
    const result = await clean(joined(box('ftyp', 'qt  \0\0\0\0qt  '), box('moov')));
    expect(result.ok ? '' : result.reason).toMatch(/clip/);
  });

  test('a file that is not there, or lies elsewhere', async () => {
    const pictures = await openPictures(memoryFolder({ 'a.jpg': await bytesOf(quarters().jpeg()) }), memoryCache());
    const [missing, outside, good] = await Promise.all([
      pictures.inspect('b.jpg'),
      pictures.inspect('../a.jpg'),
      pictures.inspect('a.jpg'),
    ]);
    expect(missing).toMatchObject({ ok: false, reason: expect.stringContaining('b.jpg') });
    expect(outside).toMatchObject({ ok: false });
    expect(good).toMatchObject({ ok: true });
  });
});

describe('a clean copy', () => {
  /** How a camera stores the quarters for each orientation, and the tag says how to undo it (Exif 2.32 4.6.4 A). */
  const stored: Record<number, (png: Uint8Array) => Promise<Uint8Array>> = {
    1: async (png) => png,
    2: (png) => bytesOf(sharp(png).flop()),
    3: (png) => bytesOf(sharp(png).rotate(180)),
    4: (png) => bytesOf(sharp(png).flip()),
    // Two steps, since the library turns after mirroring whatever the order of the calls.
    5: async (png) => bytesOf(sharp(await bytesOf(sharp(png).rotate(90))).flop()),
    6: (png) => bytesOf(sharp(png).rotate(270)),
    7: async (png) => bytesOf(sharp(await bytesOf(sharp(png).rotate(270))).flop()),
    8: (png) => bytesOf(sharp(png).rotate(90)),
  };
  test.each(Object.keys(stored).map(Number))('of orientation %i is upright in its pixels', async (orientation) => {
    const turn = stored[orientation] ?? expect.fail();
    const raw = await bytesOf(quarters().png());
    const turned = await turn(raw);
    const photo = await bytesOf(sharp(turned).withMetadata({ orientation }).jpeg());
    for (const format of formats) {
      const { asset, data } = await cleaned(photo, { format });
      expect(await coloursOf(data)).toEqual(['red', 'green', 'blue', 'white']);
      expect(asset).toMatchObject({
        width: 64,
        height: 48,
        bytes: data.length,
        format,
        name: 'photo-64',
        shot: 'photo.jpg',
      });
      expect((await sharp(data).metadata()).orientation).toBeUndefined();
    }
  });

  test.each(formats)('as %s is no wider than wanted and never enlarged', async (format) => {
    const photo = await bytesOf(quarters({ width: 400, height: 300 }).jpeg());
    expect((await cleaned(photo, { width: 200, format })).asset).toMatchObject({ width: 200, height: 150 });
    expect((await cleaned(photo, { width: 4000, format })).asset).toMatchObject({ width: 400, height: 300 });
  });

  test.each(formats)('as %s has the same bytes each time', async (format) => {
    const photo = await bytesOf(quarters({ width: 800, height: 600 }).jpeg());
    const copies = await Promise.all([1, 2, 3].map(() => cleaned(photo, { width: 333, format })));
    expect(new Set(copies.map(({ data }) => sha256(data))).size).toBe(1);
  });

  test.each(formats)('as %s keeps a wide colour profile and the colours that only it has', async (format) => {
    const { icc } = await sharp(await bytesOf(quarters().withIccProfile('p3').png())).metadata();
    const profile = new Uint8Array(icc ?? expect.fail());
    const tagged = withChunks(
      await bytesOf(quarters().png()),
      chunk('iCCP', 'p3\0\0', new Uint8Array(deflateSync(profile))),
    );
    const { data } = await cleaned(tagged, { format });
    expect(new Uint8Array((await sharp(data).metadata()).icc ?? [])).toEqual(profile);
    const untouched = await sharp(data, { ignoreIcc: true }).raw().toBuffer();
    // Red and green values of the wide space as they were, to within what lossy coding changes.
    for (const [i, value] of [250, 10, 10].entries()) expect(Math.abs((untouched[i] ?? 0) - value)).toBeLessThan(9);
  });

  test.each(formats)('as %s shows the colours of a screen, and does not say whose screen it was', async (format) => {
    const tagged = withChunks(
      await bytesOf(quarters().png()),
      chunk('iCCP', 'screen\0\0', new Uint8Array(deflateSync(await screenProfile()))),
    );
    expect(await inspect(tagged)).toMatchObject({ ok: true, value: { leaks: { fields: ['screen profile'] } } });
    const { data, removed } = await cleaned(tagged, { format });
    expect(removed).toEqual(['screen profile']);
    const { icc } = await sharp(data).metadata();
    expect(
      Buffer.from(icc ?? [])
        .toString('latin1')
        .replaceAll('\0', ''),
    ).not.toMatch(/Ada|mmod/);
    expect(await inspect(data)).toMatchObject({ ok: true, value: { leaks: { fields: [] } } });
    // Turned into sRGB by its profile, the copy shows what the original shows.
    const shown = async (picture: Uint8Array) => sharp(picture).removeAlpha().toColourspace('srgb').raw().toBuffer();
    const [before, after] = [await shown(tagged), await shown(data)];
    for (const i of [0, 1, 2, 3 * 40, 3 * 40 + 1, 3 * 40 + 2]) {
      expect(Math.abs((before[i] ?? 0) - (after[i] ?? 0))).toBeLessThan(format === 'png' ? 1 : 9);
    }
  });

  test('whose profile is broken is in sRGB', async () => {
    const broken = withChunks(
      await bytesOf(quarters().png()),
      chunk('iCCP', 'x\0\0', new Uint8Array(deflateSync((await screenProfile()).subarray(0, 200)))),
    );
    const { data } = await cleaned(broken, { format: 'png' });
    expect((await sharp(data).metadata()).hasProfile).toBe(false);
    expect(await coloursOf(data)).toEqual(['red', 'green', 'blue', 'white']);
  });

  test('of a picture for print is in sRGB', async () => {
    const print = await bytesOf(quarters().toColourspace('cmyk').withIccProfile('cmyk').jpeg());
    expect((await sharp(print).metadata()).space).toBe('cmyk');
    const { data } = await cleaned(print);
    expect(await sharp(data).metadata()).toMatchObject({ space: 'srgb', channels: 3, hasProfile: false });
    // The blue of a screen is beyond what can be printed: it comes back darker.
    expect(await coloursOf(data)).toEqual(['red', 'green', expect.anything(), 'white']);
    const { data: pixels } = await sharp(data).raw().toBuffer({ resolveWithObject: true });
    const [red = 0, green = 0, blue = 0] = pixels.subarray(3 * (36 * 64 + 16));
    expect(blue).toBeGreaterThan(2 * Math.max(red, green) - 40);
  });

  test.each(formats)('as %s of 16 bits a colour, or of greys, has 8 bits a colour', async (format) => {
    const deep = await bytesOf(quarters().toColourspace('rgb16').png());
    expect((await sharp(deep).metadata()).depth).toBe('ushort');
    const copy = await cleaned(deep, { format });
    expect((await sharp(copy.data).metadata()).depth).toBe('uchar');
    expect(await coloursOf(copy.data)).toEqual(['red', 'green', 'blue', 'white']);
    const grey = await bytesOf(quarters().greyscale().toColourspace('grey16').png());
    expect((await sharp((await cleaned(grey, { format })).data).metadata()).depth).toBe('uchar');
  });

  test('as JPEG lies on white where the original is see-through, and keeps colours sharp', async () => {
    const clear = await bytesOf(sharp({ create: { ...size, channels: 4, background: '#ff000000' } }).png());
    const { data } = await cleaned(clear);
    expect([...(await sharp(data).raw().toBuffer()).subarray(0, 3)]).toEqual([255, 255, 255]);
    expect((await sharp(data).metadata()).chromaSubsampling).toBe('4:4:4');
  });

  test('of a moving GIF is its first picture', async () => {
    const frames = [await quarters().png().toBuffer(), await quarters().negate().png().toBuffer()];
    const moving = await bytesOf(sharp(frames, { join: { animated: true } }).gif());
    const { asset, data } = await cleaned(moving, { format: 'png' });
    expect(asset).toMatchObject(size);
    expect(await coloursOf(data)).toEqual(['red', 'green', 'blue', 'white']);
  });

  test('names what the original gave away and the copy does not', async () => {
    const photo = withSegments(
      await bytesOf(quarters().jpeg()),
      segment(0xe1, 'Exif\0\0', tiff({ 315: 'Ada', 34853: gps([51, 30, 0], [0, 7, 12]) })),
      segment(0xfe, 'for Bo'),
    );
    expect((await cleaned(photo)).removed).toEqual(['position', 'owner', 'comment']);
    expect((await cleaned(await bytesOf(quarters().jpeg()))).removed).toEqual([]);
  });
});

describe('a drawing', () => {
  const drawing = (content: string) =>
    latin(
      `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="40" height="30">${content}</svg>`,
    );

  test('is rendered at the wanted width, scripts and comments gone', async () => {
    const { asset, data } = await cleaned(
      drawing('<!-- by Ada --><script>alert(1)</script><rect width="40" height="30" fill="#ff0000"/>'),
      { width: 400, format: 'png' },
    );
    expect(asset).toMatchObject({ width: 400, height: 300 });
    expect(Buffer.from(data).includes('alert')).toBe(false);
    expect([...(await sharp(data).raw().toBuffer()).subarray(0, 3)]).toEqual([255, 0, 0]);
  });

  test('cannot bring other files of the disk into the copy', async () => {
    const { mkdtemp, rm, writeFile } = await import('node:fs/promises');
    const { tmpdir } = await import('node:os');
    const folder = await mkdtemp(`${tmpdir()}/twicebuilt-test-`);
    try {
      await writeFile(`${folder}/secret.png`, await quarters().png().toBuffer());
      const links = [`file://${folder}/secret.png`, `${folder}/secret.png`];
      const images = links.map((link) => `<image href="${link}" xlink:href="${link}" width="40" height="30"/>`);
      const { data } = await cleaned(drawing(images.join('')), { format: 'png' });
      expect((await sharp(data).ensureAlpha().raw().toBuffer()).every((value) => value === 0)).toBe(true);
    } finally {
      await rm(folder, { recursive: true });
    }
  });

  test('that is broken or bottomless gives a reason', async () => {
    const broken = await clean(latin('<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30"><rect'));
    expect(broken.ok ? '' : broken.reason).toMatch(/drawing could not be read/);
    const bombs = Array.from({ length: 9 }, (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`).join('');
    const bomb = await clean(
      latin(
        `<!DOCTYPE svg [<!ENTITY e0 "boom">${bombs}]><svg xmlns="http://www.w3.org/2000/svg" width="4" height="3"><text>&e9;</text></svg>`,
      ),
    );
    expect(bomb.ok).toBe(false);
  });
});

describe('the cache', () => {
  test('answers the second time without the picture being decoded, and never with another wish', async () => {
    const cache = memoryCache();
    const keys: string[] = [];
    const watched = {
      get: cache.get,
      put: async (key: string, data: Uint8Array) => {
        keys.push(key);
        await cache.put(key, data);
      },
    };
    const photo = await bytesOf(quarters().jpeg());
    const folder = memoryFolder({ 'a.jpg': photo, 'same.jpg': photo });
    const pictures = await openPictures(folder, watched);
    const want = { shot: 'a.jpg', width: 32, format: 'png' } as const;
    const first = [await pictures.inspect('a.jpg'), await pictures.clean(want, 'a')];
    const again = [await pictures.inspect('same.jpg'), await pictures.clean(want, 'a')];
    expect(again).toEqual(first);
    expect(keys.length).toBe(2);
    const other = await pictures.clean({ ...want, shot: 'same.jpg', width: 16 }, 'b');
    expect(other).toMatchObject({ ok: true, value: { asset: { width: 16, height: 12, name: 'b', shot: 'same.jpg' } } });
    expect(new Set(keys).size).toBe(3);
  });

  test('keeps no reason: a file that failed is tried again', async () => {
    const keys: string[] = [];
    const cache = { get: async () => null, put: async (key: string) => void keys.push(key) };
    const pictures = await openPictures(memoryFolder({ 'a.jpg': latin('x') }), cache);
    expect(await pictures.inspect('a.jpg')).toMatchObject({ ok: false });
    expect(keys).toEqual([]);
  });
});
