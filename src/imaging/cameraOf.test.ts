import { expect, test } from 'vitest';
import { cameraOf } from './cameraOf.ts';

test.each<[string | null, Record<string, string>]>([
  ['Lintel One', { Make: 'Lintel', Model: 'One' }],
  ['Lintel One', { Make: 'LINTEL', Model: 'Lintel One' }],
  ['Lintel One', { Make: 'Lintel Corporation', Model: 'Lintel One' }],
  ['One', { Model: ' One\0' }],
  ['Lintel', { Make: 'Lintel', Model: '   ' }],
  ['Lintel Two', { 'com.apple.quicktime.make': 'Lintel', 'com.apple.quicktime.model': 'Two' }],
  ['Lintel Two', { '\xa9mak': 'Lintel', '\xa9mod': 'Two' }],
  [null, {}],
  [null, { Make: '', Model: '\0' }],
])('%s is told by %j', (expected, fields) => {
  expect(cameraOf(Object.entries(fields).map(([name, value]) => ({ name, value })))).toBe(expected);
});
