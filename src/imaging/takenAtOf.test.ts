import { expect, test } from 'vitest';
import { takenAtOf } from './takenAtOf.ts';

const takenAt = (fields: Record<string, string>) =>
  takenAtOf(Object.entries(fields).map(([name, value]) => ({ name, value })));

test.each<[string | null, Record<string, string>]>([
  ['2026-03-04T05:06:07', { DateTimeOriginal: '2026:03:04 05:06:07' }],
  ['2026-03-04T05:06:07+02:00', { DateTimeOriginal: '2026:03:04 05:06:07', OffsetTimeOriginal: '+02:00' }],
  ['2026-03-04T05:06:07Z', { DateTimeOriginal: '2026:03:04 05:06:07', OffsetTimeOriginal: 'Z' }],
  ['2026-03-04T05:06:07', { DateTimeOriginal: '2026:03:04 05:06:07', OffsetTime: '+02:00' }],
  ['2026-03-04T05:06:07', { DateTimeOriginal: '2026:03:04 05:06:07\0', OffsetTimeOriginal: '   :  ' }],
  ['2026-03-04T05:06:07+09:30', { 'com.apple.quicktime.creationdate': '2026-03-04T05:06:07+0930' }],
  ['2026-03-04T05:06:07', { DateCreated: '2026-03-04T05:06:07.123' }],
  ['2026-03-04T05:06:00+01:00', { CreateDate: '2026-03-04T05:06+01:00' }],
  ['2026-01-01T00:00:00', { DateTimeOriginal: '0000:00:00 00:00:00', DateTimeDigitized: '2026:01:01 00:00:00' }],
  [null, { DateTimeOriginal: '0000:00:00 00:00:00' }],
  [null, { DateTimeOriginal: '    :  :     :  :  ' }],
  [null, { DateTimeOriginal: '2026:13:01 00:00:00' }],
  [null, { DateTimeOriginal: '2026:02:30 00:00:00' }],
  [null, { DateTimeOriginal: '2026:02:28 25:00:00' }],
  [null, { DateTimeOriginal: 'yesterday' }],
  [null, { DateTime: '2026:03:04 05:06:07', ModifyDate: '2026-03-04T05:06:07' }],
  [null, {}],
])('%s is told by %j', (expected, fields) => {
  expect(takenAt(fields)).toBe(expected);
});

test('the moment of exposure wins over the moment of digitising', () => {
  expect(takenAt({ DateTimeDigitized: '2026:01:01 00:00:00', DateTimeOriginal: '1999:12:31 23:59:59' })).toBe(
    '1999-12-31T23:59:59',
  );
});
