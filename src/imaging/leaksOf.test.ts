import { describe, expect, test } from 'vitest';
import { leaksOf } from './leaksOf.ts';

const leaks = (fields: Record<string, string>) =>
  leaksOf(Object.entries(fields).map(([name, value]) => ({ name, value })));

describe('a position', () => {
  test.each<[string, Record<string, string>]>([
    ['in decimal degrees', { GPSLatitude: '51.5', GPSLongitude: '0.12' }],
    ['in degrees and minutes', { GPSLatitude: '51,30.5N', GPSLongitude: '0,7.2W' }],
    ['in degrees, minutes and seconds', { GPSLatitude: '51,30,27N', GPSLongitude: '0,7,12W' }],
    ['as a program prints it', { GPSLatitude: `51 deg 30' 27.00" N`, GPSLongitude: `0 deg 7' 12.00" W` }],
    ['on the equator', { GPSLatitude: '0', GPSLongitude: '12.5' }],
    ['of a destination', { GPSDestLatitude: '51.5', GPSDestLongitude: '0.12' }],
    ['in a clip, ISO 6709', { 'com.apple.quicktime.location.ISO6709': '+51.5074-000.1278+011.0/' }],
    ['in a clip, ISO 6709 with minutes', { '\xa9xyz': '+5130.44-00007.67/' }],
    ['in a clip, ISO 6709 with seconds', { '\xa9xyz': '+513026.4-0000740.1/' }],
    ['as two numbers', { GPSCoordinates: '51.5 -0.12 11' }],
  ])('%s is a leak', (_, fields) => {
    expect(leaks(fields)).toEqual({ position: true, fields: ['position'] });
  });

  test.each<[string, Record<string, string>]>([
    ['both zero', { GPSLatitude: '0', GPSLongitude: '0' }],
    ['both zero, in three parts', { GPSLatitude: '0,0,0N', GPSLongitude: '0,0,0E' }],
    ['a zero place of a clip', { '\xa9xyz': '+00.0000+000.0000/' }],
    ['a block that only says its version and time', { GPSVersionID: '2.3.0.0', GPSTimeStamp: '12:00:00' }],
    ['one coordinate alone', { GPSLatitude: '51.5' }],
    ['beyond the pole', { GPSLatitude: '151.5', GPSLongitude: '12.5' }],
    ['beyond the date line', { GPSLatitude: '51.5', GPSLongitude: '999' }],
    ['no number', { GPSLatitude: 'NaN', GPSLongitude: 'NaN' }],
    ['empty', { GPSLatitude: '', GPSLongitude: '' }],
    ['no value at all', {}],
  ])('%s is none', (_, fields) => {
    expect(leaks(fields)).toEqual({ position: false, fields: [] });
  });
});

describe('a private field', () => {
  test.each([
    ['BodySerialNumber', 'A1', 'serial number'],
    ['LensSerialNumber', 'A1', 'lens serial number'],
    ['CameraOwnerName', 'Ada', 'owner'],
    ['By-line', 'Ada', null],
    ['Creator', 'Ada', 'owner'],
    ['ImageUniqueID', 'ab12', 'unique image id'],
    ['HostComputer', 'desk', 'host computer'],
    ['MakerNote', 'present', 'maker note'],
    ['UserComment', 'for Bo', 'comment'],
    ['City', 'Tidewick', 'place name'],
    ['Software', '1.0', 'software'],
    ['PersonInImage', 'Ada', 'people'],
  ])('%s is named by its group alone', (name, value, group) => {
    const result = leaks({ [name]: value });
    expect(result.fields).toEqual(group === null ? [] : [group]);
    expect(JSON.stringify(result)).not.toContain(value);
  });

  test.each(['', '   ', '0', '0000000', '\0\0\0\0'])('that holds %j gives nothing away', (value) => {
    expect(leaks({ BodySerialNumber: value, Artist: value }).fields).toEqual([]);
  });

  test.each([
    '/home/ada/lamp.psd',
    '/Users/ada/lamp.psd',
    'saved to C:\\Users\\ada\\lamp.psd',
    'file:///tmp/lamp.svg',
    '\\\\desk\\share\\lamp.psd',
  ])('that holds the path %j is a file path too', (value) => {
    expect(leaks({ Unheard: value }).fields).toEqual(['file path']);
  });

  test.each(['1/60', 'f/2.8', 'a/b', 'https://www.w3.org/home/', '12:30', 'N/A'])(
    'that holds %j is no path',
    (value) => {
      expect(leaks({ Unheard: value }).fields).toEqual([]);
    },
  );

  test('each group is named once, position first and unknown data last', () => {
    const fields = [
      { name: 'Comment', value: 'x' },
      { name: 'UserComment', value: 'y' },
      { name: 'SerialNumber', value: 'z' },
      { name: 'GPSLatitude', value: '1' },
      { name: 'GPSLongitude', value: '1' },
    ];
    expect(leaksOf(fields, ['other data', 'embedded preview']).fields).toEqual([
      'position',
      'serial number',
      'embedded preview',
      'comment',
      'other data',
    ]);
  });
});
