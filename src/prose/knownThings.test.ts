import { describe, expect, it } from 'vitest';
import { knownThings, plainPath } from './knownThings.ts';
import { madeUpBuild } from './madeUpBuild.ts';

describe('knownThings', () => {
  const known = knownThings(
    madeUpBuild({
      parts: ['R1: resistor, 330 ohm', 'U1: module'],
      wiring: ['J7.1 R1.2'],
      files: ['docs/code/a.py', 'b.py'],
    }),
  );

  it('finds paths from the root, then beside the text that names them', () => {
    expect(known.pathNamed('b.py', 'docs/guide.md')).toBe('b.py');
    expect(known.pathNamed('code/a.py', 'docs/guide.md')).toBe('docs/code/a.py');
    expect(known.pathNamed('../b.py', 'docs/guide.md')).toBe('b.py');
    expect(known.pathNamed('docs/code/', 'docs/guide.md')).toBe('docs/code');
    expect(known.pathNamed('code/a.py', 'guide.md')).toBeNull();
  });

  it('lets parts of the wiring have pins though no list has them', () => {
    expect([...known.refs]).toEqual(['R1', 'U1', 'J7']);
    expect(known.partOfRef.has('J7')).toBe(false);
  });

  it('compares descriptions by words and values, not by spelling', () => {
    expect(known.partNamed('330 Ω Resistor')?.id).toBe('R1');
    expect(known.partNamed('')).toBeNull();
  });
});

describe('plainPath', () => {
  it('resolves dots, back slashes and doubled slashes', () => {
    expect(plainPath('./a//b\\../c/')).toBe('a/c');
  });
});
