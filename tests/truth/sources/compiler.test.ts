import { describe, expect, it } from 'vitest';
import compiler from './compiler.json';
import { readFiles } from './readFiles.ts';

// What g++ keeps of each text, and the numbers that it gives to enumerators: compiler.json, see SOURCE.md.
describe('the reading of C++ and a compiler', () => {
  it('keep the same branches of every conditional block', async () => {
    expect(compiler.conditionals).toHaveLength(240);
    for (const { text, kept } of compiler.conditionals) {
      const { sources } = await readFiles({ 'a.h': text });
      const names = sources[0]?.pins.map(({ name }) => name) ?? [];
      expect(names, text).toEqual(kept);
    }
  });

  it('give the same numbers to enumerators', async () => {
    expect(compiler.enumerations).toHaveLength(60);
    for (const { text, values } of compiler.enumerations) {
      const { sources } = await readFiles({ 'a.h': text });
      const found = Object.fromEntries(sources[0]?.pins.map(({ name, pin }) => [name, numberOf(pin)]) ?? []);
      expect(found, text).toEqual(values);
    }
  });
});

/** Octal where C++ reads octal. */
function numberOf(pin: string): number {
  return /^0\d+$/.test(pin) ? Number.parseInt(pin, 8) : Number(pin);
}
