import { createHash } from 'node:crypto';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { openFolder } from '#outside/files/openFolder.ts';
import { openPictures } from '#outside/pictures/openPictures.ts';
import { box, chunk, joined, segment, tiff, uint32, withChunks, withSegments } from '../../outside/pictureBytes.ts';
import { screenProfile } from '../../outside/screenProfile.ts';
import { exiftoolVersion, readBinaryTag, readTags, writeTags } from './exiftool.ts';

const version = exiftoolVersion();
const skipped =
  version === null ? ' (skipped: exiftool is not installed; Debian has it as libimage-exiftool-perl)' : '';

const stills = ['jpeg', 'png', 'webp', 'tiff'] as const;
const copies = ['jpeg', 'png', 'webp'] as const;

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'twicebuilt-test-'));
  await writeFile(path.join(folder, 'preview'), await plain(16, 12).jpeg().toBuffer());
});

afterAll(() => rm(folder, { recursive: true, force: true }));

function plain(width: number, height: number): Sharp {
  return sharp({ create: { width, height, channels: 3, background: '#305070' } });
}

const position = (group: string) => [
  `-${group}:GPSLatitude=51.5`,
  `-${group}:GPSLongitude=${group === 'XMP' ? '-0.12' : '0.12'}`,
];
const exifPosition = [...position('EXIF'), '-EXIF:GPSLatitudeRef=N', '-EXIF:GPSLongitudeRef=W'];
const face =
  '{AppliedToDimensions={W=60,H=40,Unit=pixel},RegionList=[{Area={X=0.5,Y=0.5,W=0.1,H=0.1,Unit=normalized},Name=Ada,Type=Face}]}';

/** What exiftool is told to write, and the group that must be reported for it. */
const cases: readonly (readonly [group: string, ...tags: string[]])[] = [
  ['position', ...exifPosition],
  ['position', ...position('XMP')],
  ['position', '-EXIF:GPSDestLatitude=51.5', '-EXIF:GPSDestLongitude=0.12'],
  ['serial number', '-EXIF:SerialNumber=A1'],
  ['serial number', '-XMP-exifEX:SerialNumber=A1'],
  ['serial number', '-XMP-aux:SerialNumber=A1'],
  ['lens serial number', '-EXIF:LensSerialNumber=L1'],
  ['lens serial number', '-XMP-aux:LensSerialNumber=L1'],
  ['owner', '-EXIF:OwnerName=Ada'],
  ['owner', '-EXIF:Artist=Ada'],
  ['owner', '-EXIF:XPAuthor=Ada'],
  ['owner', '-XMP-aux:OwnerName=Ada'],
  ['owner', '-XMP-dc:Creator=Ada'],
  ['owner', '-XMP-iptcCore:CreatorWorkEmail=ada@lintel.example'],
  ['place name', '-XMP-photoshop:City=Tidewick'],
  ['place name', '-XMP-iptcCore:Location=Quay'],
  ['unique image id', '-EXIF:ImageUniqueID=ab12'],
  ['unique image id', '-XMP-xmpMM:DocumentID=xmp.did:1'],
  ['software', '-EXIF:Software=Bench 1.0'],
  ['software', '-XMP-xmp:CreatorTool=Bench 1.0'],
  ['host computer', '-EXIF:HostComputer=desk'],
  ['file path', '-EXIF:DocumentName=/home/ada/lamp.psd'],
  ['editing history', '-XMP-xmpMM:History={Action=saved,When=2026:03:04 05:06:07}'],
  ['face regions', `-XMP-mwg-rs:RegionInfo=${face}`],
  ['people', '-XMP-iptcExt:PersonInImage=Ada'],
  ['comment', '-EXIF:UserComment=for Bo'],
  ['comment', '-EXIF:ImageDescription=bench'],
  ['comment', '-XMP-dc:Description=bench'],
  ['embedded preview', '-ThumbnailImage<=preview'],
  ['embedded preview', '-XMP-xmp:ThumbnailImage<=preview'],
];
/** A TIFF has no second directory of thumbnails; IPTC belongs to JPEG and TIFF; the rest is PNG's own. */
const jpegCases = [
  ['owner', '-IPTC:By-line=Ada'],
  ['place name', '-IPTC:City=Tidewick'],
  ['embedded preview', '-PhotoshopThumbnail<=preview'],
  ['comment', '-Comment=for Bo'],
] as const;
const pngCases = [
  ['owner', '-PNG:Author=Ada'],
  ['comment', '-PNG:Comment=for Bo'],
  ['software', '-PNG:Software=Bench 1.0'],
  ['comment', '-compress', '-PNG:Comment-deu=für Bo'],
] as const;
const tiffCases = [['owner', '-IPTC:By-line=Ada']] as const;
const clipCases = [
  ['position', '-Keys:GPSCoordinates=51.5, -0.12, 11'],
  ['position', '-UserData:GPSCoordinates=51.5, -0.12, 11'],
  ['position', '-ItemList:GPSCoordinates=51.5, -0.12, 11'],
  ['position', ...position('XMP')],
  ['serial number', '-XMP-aux:SerialNumber=A1'],
  ['owner', '-ItemList:Artist=Ada'],
  ['owner', '-Keys:Author=Ada'],
  ['software', '-Keys:Software=1.0'],
  ['comment', '-UserData:Comment=for Bo'],
] as const;

async function inspected(name: string) {
  const pictures = await openPictures(await openFolder(folder), memoryCache());
  const result = await pictures.inspect(name);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
}

const inFolder = (name: string) => path.join(folder, name);
const previewIn = (tags: readonly string[]) => tags.map((tag) => tag.replace('<=preview', `<=${inFolder('preview')}`));

let files = 0;

async function marked(ending: string, content: Uint8Array, tags: readonly string[]): Promise<string> {
  const name = `${++files}.${ending}`;
  await writeFile(inFolder(name), content);
  await writeTags([{ file: inFolder(name), tags: previewIn(tags) }]);
  return name;
}

function clip(brand: string): Uint8Array {
  const matrix = [65536, 0, 0, 0, 65536, 0, 0, 0, 0x40000000].map(uint32);
  const header = box(
    'mvhd',
    uint32(0),
    uint32(0),
    uint32(0),
    uint32(600),
    uint32(600),
    uint32(65536),
    '\x01\0',
    new Uint8Array(10),
    ...matrix,
    new Uint8Array(24),
    uint32(2),
  );
  const track = box(
    'tkhd',
    uint32(15),
    uint32(0),
    uint32(0),
    uint32(1),
    uint32(0),
    uint32(600),
    new Uint8Array(16),
    ...matrix,
    uint32(1920 << 16),
    uint32(1080 << 16),
  );
  return joined(box('ftyp', brand, uint32(0), brand), box('moov', header, box('trak', track)), box('mdat', 'media'));
}

describe.skipIf(version === null)(`what exiftool wrote is reported by its group alone${skipped}`, () => {
  const stillCases = (kind: string) =>
    // The thumbnail of a TIFF is its second page, which exiftool does not write.
    cases.filter(([, tag]) => kind !== 'tiff' || !tag?.startsWith('-ThumbnailImage'));
  const all = [
    ...stills.flatMap((kind) => stillCases(kind).map((one) => [kind, ...one])),
    ...jpegCases.map((one) => ['jpeg', ...one]),
    ...pngCases.map((one) => ['png', ...one]),
    ...tiffCases.map((one) => ['tiff', ...one]),
    ...clipCases.flatMap((one) => [
      ['mov', ...one],
      ['mp4', ...one],
    ]),
  ].map(([kind = '', group = '', ...tags], i) => ({ name: `case-${i}.${kind}`, kind, group, tags }));

  beforeAll(async () => {
    const contents = new Map<string, Uint8Array>([
      ['mov', clip('qt  ')],
      ['mp4', clip('mp42')],
    ]);
    for (const kind of stills) contents.set(kind, new Uint8Array(await plain(60, 40).toFormat(kind).toBuffer()));
    for (const { name, kind } of all) await writeFile(inFolder(name), contents.get(kind) ?? '');
    await writeTags(all.map(({ name, tags }) => ({ file: inFolder(name), tags: previewIn(tags) })));
  }, 120_000);

  test.each(all)('$kind: $group, by $tags', async ({ name, group }) => {
    const { leaks } = await inspected(name);
    expect(leaks.fields).toContain(group);
    // A path or a list of steps may be a comment or name a program as well.
    if (group !== 'file path' && group !== 'editing history') expect(leaks.fields).toEqual([group]);
    expect(leaks.position).toBe(group === 'position');
  });
});

describe.skipIf(version === null)(`a picture without private fields is reported as such${skipped}`, () => {
  test.each(stills)('%s with camera, exposure, date and an empty block of positions', async (kind) => {
    const name = await marked(kind, new Uint8Array(await plain(60, 40).toFormat(kind).toBuffer()), [
      '-EXIF:GPSVersionID=2 3 0 0',
      '-EXIF:GPSLatitude=0',
      '-EXIF:GPSLatitudeRef=N',
      '-EXIF:GPSLongitude=0',
      '-EXIF:GPSLongitudeRef=E',
      '-EXIF:Make=Lintel',
      '-EXIF:Model=One',
      '-EXIF:ExposureTime=1/60',
      '-EXIF:FNumber=2.8',
      '-EXIF:DateTimeOriginal=2026:03:04 05:06:07',
      '-EXIF:OffsetTimeOriginal=+02:00',
      '-EXIF:SerialNumber=0000000',
    ]);
    const tags = await readTags(inFolder(name));
    expect(tags.get('GPS:GPSLatitude')).toMatch(/^0 deg/);
    expect(await inspected(name)).toMatchObject({
      takenAt: '2026-03-04T05:06:07+02:00',
      camera: 'Lintel One',
      width: 60,
      height: 40,
      leaks: { position: false, fields: [] },
    });
  });

  test.each(['mov', 'mp4'])('%s with camera, date and size', async (ending) => {
    const name = await marked(ending, clip(ending === 'mov' ? 'qt  ' : 'mp42'), [
      '-Keys:Make=Lintel',
      '-Keys:Model=One',
      '-Keys:CreationDate=2026:03:04 05:06:07+02:00',
    ]);
    expect(await inspected(name)).toMatchObject({
      kind: 'clip',
      takenAt: '2026-03-04T05:06:07+02:00',
      camera: 'Lintel One',
      width: 1920,
      height: 1080,
      leaks: { position: false, fields: [] },
    });
  });
});

describe.skipIf(version === null)(`a clean copy, as exiftool reads it${skipped}`, () => {
  /** Groups that describe the file as such; everything else would be metadata that was carried along. */
  const ofTheFile = /^(ExifTool|System|File|JFIF|PNG|PNG-pHYs|RIFF|ICC-header|ICC_Profile|Composite):/;
  const neededNames = new Set(
    `ExifToolVersion FileName Directory FileSize FileModifyDate FileAccessDate FileInodeChangeDate FilePermissions
    FileType FileTypeExtension MIMEType ImageWidth ImageHeight EncodingProcess BitsPerSample ColorComponents
    YCbCrSubSampling JFIFVersion ResolutionUnit XResolution YResolution BitDepth ColorType Compression Filter Interlace
    PixelsPerUnitX PixelsPerUnitY PixelUnits ProfileName VP8Version HorizontalScale VerticalScale WebP_Flags
    AlphaIsUsed ImageSize Megapixels`.split(/\s+/),
  );

  async function everythingSet(kind: (typeof stills)[number]): Promise<string> {
    // exiftool cannot make a maker note; it keeps the one it finds.
    const note = tiff({ 34665: { 37500: new TextEncoder().encode('LINTEL NOTE WITH SERIAL A1') } });
    const pixels = await sharp(await plain(60, 40).png().toBuffer())
      .composite([
        { input: { create: { width: 30, height: 20, channels: 3, background: '#fafafa' } }, left: 0, top: 0 },
      ])
      .withIccProfile('p3')
      .toFormat(kind)
      .toBuffer();
    const content =
      kind === 'jpeg' ? withSegments(new Uint8Array(pixels), segment(0xe1, 'Exif\0\0', note)) : new Uint8Array(pixels);
    const own = kind === 'jpeg' ? jpegCases : kind === 'png' ? pngCases : kind === 'tiff' ? tiffCases : [];
    const tags = [...cases, ...own]
      .flatMap(([, ...tags]) => tags)
      .filter((tag) => tag !== '-compress' && !(kind === 'tiff' && tag.startsWith('-ThumbnailImage')));
    return marked(kind, content, [...tags, '-Orientation#=6']);
  }

  test.each(stills)('of a %s with every private field set holds none of them', { timeout: 60_000 }, async (kind) => {
    const name = await everythingSet(kind);
    const before = await readFile(inFolder(name));
    const tags = await readTags(inFolder(name));
    for (const needed of [
      'GPS:GPSLatitude',
      'ExifIFD:SerialNumber',
      'IFD0:Artist',
      'XMP-dc:Creator',
      'IFD0:Orientation',
    ]) {
      expect(tags.has(needed), `the original has ${needed}`).toBe(true);
    }
    const pictures = await openPictures(await openFolder(folder), memoryCache());
    for (const format of copies) {
      const copy = await pictures.clean({ shot: name, width: 1600, format }, 'copy');
      if (!copy.ok) throw new Error(copy.reason);
      const file = inFolder(`${name}.copy.${format}`);
      await writeFile(file, copy.value.data);

      const left = [...(await readTags(file)).keys()];
      const foreign = left.filter(
        (tag) => !ofTheFile.test(tag) || !(tag.startsWith('ICC') || neededNames.has(tag.split(':')[1] ?? '')),
      );
      expect(foreign).toEqual([]);
      for (const word of ['Ada', 'LINTEL', 'Tidewick', 'for Bo', 'Bench', 'desk']) {
        expect(Buffer.from(copy.value.data).includes(word), word).toBe(false);
      }

      const profile = await readBinaryTag(inFolder(name), '-ICC_Profile');
      expect(profile.length).toBeGreaterThan(300);
      expect(await readBinaryTag(file, '-ICC_Profile')).toEqual(profile);

      // Orientation 6: the top left of the stored picture is the top right of the upright one.
      expect(copy.value.asset).toMatchObject({ width: 40, height: 60 });
      const { data, info } = await sharp(copy.value.data, { ignoreIcc: true })
        .raw()
        .toBuffer({ resolveWithObject: true });
      const brightness = (column: number, row: number) => data[(row * info.width + column) * info.channels] ?? 0;
      expect(brightness(35, 10)).toBeGreaterThan(200);
      expect(brightness(5, 10)).toBeLessThan(120);
      expect(brightness(35, 50)).toBeLessThan(120);

      const again = await openPictures(await openFolder(folder), memoryCache());
      const second = await again.clean({ shot: name, width: 1600, format }, 'copy');
      expect(second.ok && sha256(second.value.data)).toBe(sha256(copy.value.data));

      const groups = new Set([...cases, ...(kind === 'jpeg' ? jpegCases : [])].map(([group]) => group));
      if (kind === 'jpeg') groups.add('maker note');
      expect(new Set(copy.value.removed)).toEqual(groups);
    }
    expect(sha256(await readFile(inFolder(name)))).toBe(sha256(before));
  });
});

describe.skipIf(version === null)(
  `a copy of a picture with the profile of a screen, as exiftool reads it${skipped}`,
  () => {
    test.each(copies)('as %s has a sound profile that does not name the screen', async (format) => {
      const profile = chunk('iCCP', 'screen\0\0', new Uint8Array(deflateSync(await screenProfile())));
      await writeFile(
        inFolder('screen.png'),
        withChunks(new Uint8Array(await plain(60, 40).png().toBuffer()), profile),
      );
      const before = await readTags(inFolder('screen.png'));
      expect(before.get('ICC_Profile:ProfileDescription')).toContain('Ada');
      expect(before.has('ICC_Profile:MakeAndModel')).toBe(true);
      const pictures = await openPictures(await openFolder(folder), memoryCache());
      const copy = await pictures.clean({ shot: 'screen.png', width: 60, format }, 'screen');
      if (!copy.ok) throw new Error(copy.reason);
      await writeFile(inFolder(`screen.copy.${format}`), copy.value.data);
      const after = await readTags(inFolder(`screen.copy.${format}`));
      expect(after.get('ICC_Profile:ProfileDescription')).toBe('RGB');
      expect([...after.keys()].filter((tag) => /MakeAndModel|VideoCardGamma|Warning|Error/.test(tag))).toEqual([]);
      for (const tag of [
        'RedMatrixColumn',
        'GreenMatrixColumn',
        'BlueMatrixColumn',
        'MediaWhitePoint',
        'ChromaticAdaptation',
      ]) {
        expect(after.get(`ICC_Profile:${tag}`)).toBe(before.get(`ICC_Profile:${tag}`) ?? expect.fail());
      }
      expect(JSON.stringify([...after])).not.toMatch(/\bAda\b|LNTL/);
    });
  },
);

function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
