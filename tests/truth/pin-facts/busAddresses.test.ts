import { describe, expect, it } from 'vitest';
import table from '../../../src/checks/knowledge/busAddresses.json';
import { readFiles } from '../sources/readFiles.ts';

// UM10204 rev. 5, table of reserved addresses: 0000 XXX and 1111 XXX.
const reserved = (address: number) => address >> 3 === 0b0000 || address >> 3 === 0b1111;

describe('reserved addresses of the I²C bus', () => {
  it('leaves the 112 addresses that the specification leaves', async () => {
    const all = Array.from({ length: 128 }, (_, address) => address);
    const lines = all.map((address) => `const int S${address}_ADDRESS = 0x${address.toString(16)};`);
    const { sources } = await readFiles({ 'bus.ino': `${lines.join('\n')}\nvoid setup() {}\n` });
    const read = sources.flatMap(({ constants }) => constants.filter(({ kind }) => kind === 'address'));
    expect(read.map(({ value }) => Number(value))).toEqual(all.filter((address) => !reserved(address)));
    expect(read).toHaveLength(112);
  });
  it.each(table.chips)('names none of them for $chip', ({ addresses }) => {
    for (const address of addresses) {
      expect(Number(address)).toBeGreaterThan(0);
      expect(reserved(Number(address)), address).toBe(false);
      expect(Number(address)).toBeLessThan(0x80);
    }
  });
});
