import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { box, joined, latin } from '../../tests/outside/pictureBytes.ts';
import { kindOfBytes } from './kindOfBytes.ts';

const picture = () => sharp({ create: { width: 3, height: 2, channels: 3, background: '#804020' } });
const ftyp = (...brands: string[]) => box('ftyp', brands[0] ?? '', '\0\0\0\0', ...brands.slice(1));
const utf16 = (text: string) => new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'));
const utf8 = (text: string) => new TextEncoder().encode(text);

describe('the kind of a file is told by its bytes', () => {
  test.each(['jpeg', 'png', 'webp', 'gif', 'tiff'] as const)('a %s that a library wrote', async (format) => {
    expect(kindOfBytes(await picture().toFormat(format).toBuffer())).toBe(format);
  });

  test('an AVIF counts with HEIC, whose container it shares', async () => {
    expect(kindOfBytes(await picture().avif().toBuffer())).toBe('heic');
  });

  test.each([
    ['heic', ftyp('heic', 'mif1', 'heic')],
    ['heic', ftyp('mif1', 'mif1', 'heic')],
    ['heic', ftyp('xxxx', 'msf1')],
    ['clip', ftyp('isom', 'isom', 'avc1')],
    ['clip', ftyp('qt  ')],
    ['clip', ftyp('mp42', 'isom')],
    ['clip', ftyp('3gp5', 'isom')],
    ['clip', joined(box('wide'), box('mdat', 'x'))],
    ['clip', box('moov', 'x')],
    ['tiff', latin('MM\0*\0\0\0\x08')],
    ['gif', latin('GIF87a')],
    ['svg', utf8('<svg xmlns="http://www.w3.org/2000/svg"/>')],
    [
      'svg',
      utf8('\ufeff<?xml version="1.0"?>\n<!-- by hand -->\n<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "x">\n<svg>'),
    ],
    ['svg', utf8('<svg:svg xmlns:svg="http://www.w3.org/2000/svg">')],
    ['svg', utf16('<?xml version="1.0"?><svg width="1">')],
  ])('%s', (kind, bytes) => {
    expect(kindOfBytes(bytes)).toBe(kind);
  });

  test.each([
    ['nothing', new Uint8Array()],
    ['one byte', latin('\xff')],
    ['plain text', utf8('# Guide\n')],
    ['a page that shows a drawing', utf8('<!DOCTYPE html><html><svg></svg></html>')],
    ['text that speaks of one', utf8('An <svg> element')],
    ['another XML file', utf8('<?xml version="1.0"?><svgish/>')],
    ['a sound in RIFF', latin('RIFF\0\0\0\0WAVEfmt ')],
    ['a font in boxes', ftyp('font')],
    ['an archive', latin('PK\x03\x04')],
    ['a JPEG without its third byte', latin('\xff\xd8')],
  ])('%s is no picture and no clip', (_, bytes) => {
    expect(kindOfBytes(bytes)).toBeNull();
  });

  test('a long head of angle brackets takes no time', () => {
    const started = performance.now();
    kindOfBytes(utf8('<!--'.repeat(1024)));
    kindOfBytes(utf8('<?'.repeat(2048)));
    kindOfBytes(utf8(' '.repeat(4096)));
    expect(performance.now() - started).toBeLessThan(500);
  });
});
