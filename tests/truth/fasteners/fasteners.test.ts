import { describe, expect, it } from 'vitest';
import table from '../../../src/checks/knowledge/fasteners.json';
import drives from './drives.json';

type Sizes = Readonly<Record<string, string | number>>;

const head = (standard: string): Sizes => {
  const found = table.heads.find((one) => one.standard.includes(standard));
  if (found === undefined) throw new Error(`no head of ${standard}`);
  return found.sizes;
};
const threads = table.threads as Readonly<Record<string, { pitchMm: number; nutMm: number }>>;

describe('threads and drives against tables that were made by others', () => {
  it.each(Object.entries(drives.pitchMm))('%s has a coarse pitch of %d mm', (thread, pitch) => {
    expect(threads[thread]?.pitchMm).toBe(pitch);
  });
  it.each(Object.entries(drives['iso4032:s']))('a nut of %s takes a spanner of %d mm', (thread, size) => {
    expect(threads[thread]?.nutMm).toBe(size);
  });
  it.each([
    ['ISO 4762', drives['iso4762:s']],
    ['ISO 4026', drives['iso4026:s']],
    ['ISO 4014', drives['iso4014:s']],
  ] as const)('%s, size by size', (standard, sizes) => {
    const expected = Object.fromEntries(Object.entries(sizes).map(([thread, size]) => [thread, `${size} mm`]));
    expect(head(standard)).toEqual(expected);
  });
  it.each([
    ['ISO 7046', drives['iso7046:recess']],
    ['ISO 14583', drives['iso14583:recess']],
  ] as const)('%s, size by size', (standard, sizes) => {
    expect(head(standard)).toEqual(sizes);
  });
  it.each([
    ['ISO 7380', drives['iso7380_1:s']],
    ['ISO 10642', drives['iso10642:s']],
  ] as const)('the keys of %s fit into the widest socket', (standard, sockets) => {
    for (const [thread, widest] of Object.entries(sockets)) {
      const key = Number.parseFloat(String(head(standard)[thread]));
      expect(widest - key, thread).toBeGreaterThan(0);
      expect(widest - key, thread).toBeLessThan(0.2);
    }
  });
});
