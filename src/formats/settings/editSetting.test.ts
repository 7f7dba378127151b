import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { Failure } from '#core/failure.ts';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { applyEdit, undoEdit } from '../edit/applyEdit.ts';
import { decodeText } from '../text/decodeText.ts';
import { editSetting, type SettingValue } from './readSettings.ts';

const sourceOf = (text: string): SourceText => ({
  file: 'twicebuilt.yaml',
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});

/** Sets a value, and makes sure that the edit applies, leaves the rest of the file and can be taken back. */
function set(text: string, path: string[], value: SettingValue): string {
  const source = sourceOf(text);
  const bytes = new TextEncoder().encode(text);
  const applied = applyEdit(source, bytes, editSetting(source, path, value));
  if (!applied.ok) throw new Error(applied.problem.message);
  const after = decodeText(source.file, applied.bytes, 'after');
  if (!after.ok) throw new Error(after.problem.message);
  const undone = undoEdit(after.source, applied.bytes, applied.inverse);
  expect(undone.ok && undone.bytes).toEqual(bytes);
  return applied.text;
}

const file = `# our lamp
format:   1
title: Tide lamp   # working title

authors:
    - Ines Holm   # lead
    - Bo Lind

roles: {guide: guide.md,  parts: parts.csv}
skills: []
supply:  # not measured yet
# the end
`;

describe('editSetting', () => {
  it('replaces one value and nothing else', () => {
    expect(set(file, ['title'], 'Moon: lamp')).toBe(file.replace('Tide lamp', '"Moon: lamp"'));
    expect(set(file, ['authors', '0'], 'Ines H.')).toBe(file.replace('Ines Holm', 'Ines H.'));
    expect(set(file, ['roles', 'guide'], ['a.md', 'b.md'])).toBe(file.replace('guide.md', '[ a.md, b.md ]'));
    expect(set(file, ['authors'], ['Bo'])).toBe(file.replace('- Ines Holm   # lead\n    - Bo Lind', '- Bo'));
  });
  it('adds an entry after the last of a list, set in as the others are', () => {
    expect(set(file, ['authors', '-'], 'Mara Quist')).toBe(file.replace('- Bo Lind', '- Bo Lind\n    - Mara Quist'));
    expect(set(file, ['skills', '-'], 'crimping')).toBe(file.replace('[]', '[crimping]'));
    expect(set('a: [x, y]\n', ['a', '-'], 'p, q')).toBe('a: [x, y, "p, q"]\n');
  });
  it('adds a list that is not there yet, and then to it', () => {
    const acceptance = { finding: 'spares:R1', reason: 'I have plenty', digests: ['a1', 'b2'] };
    const once = set(file, ['accepted', '-'], acceptance);
    expect(once).toBe(
      file.replace(
        'supply:  # not measured yet\n',
        'supply:  # not measured yet\naccepted:\n  - finding: spares:R1\n    reason: I have plenty\n    digests:\n      - a1\n      - b2\n',
      ),
    );
    const twice = set(once, ['accepted', '-'], { ...acceptance, finding: 'spares:R2' });
    expect((parse(twice) as { accepted: unknown }).accepted).toEqual([
      acceptance,
      { ...acceptance, finding: 'spares:R2' },
    ]);
  });
  it('gives a value to a key that has none, beside its comment', () => {
    expect(set(file, ['supply'], '5 V')).toContain('supply: 5 V  # not measured yet\n');
    expect(set(file, ['supply'], ['5 V', '2 A'])).toContain('supply:  # not measured yet\n  - 5 V\n  - 2 A\n');
  });
  it('adds a key to an inner map in the style of that map', () => {
    expect(set(file, ['roles', 'wiring'], 'w.csv')).toBe(file.replace('parts.csv}', 'parts.csv, wiring: w.csv}'));
    expect(set('licences:\n   code: MIT\n', ['licences', 'text'], 'CC0-1.0')).toBe(
      'licences:\n   code: MIT\n   text: CC0-1.0\n',
    );
  });
  it('begins an empty file, and ends a last line that has no end', () => {
    expect(set('', ['title'], 'Lamp')).toBe('title: Lamp\n');
    expect(set('# only words', ['title'], 'Lamp')).toBe('# only words\ntitle: Lamp\n');
    expect(set('format: 1', ['licences', 'code'], 'MIT')).toBe('format: 1\nlicences:\n  code: MIT');
  });
  it('keeps to the ends of line that the file has', () => {
    expect(set('format: 1\r\na:\r\n  - x\r\n', ['a', '-'], { k: 'v', l: 'w' })).toBe(
      'format: 1\r\na:\r\n  - x\r\n  - k: v\r\n    l: w\r\n',
    );
  });
  it('refuses what would touch other values or lead through a word', () => {
    const refused = (text: string, path: string[]) =>
      expect(() => editSetting(sourceOf(text), path, 'x')).toThrow(Failure);
    refused('a: &n 1\nb: *n\n', ['a']);
    refused('a: word\n', ['a', 'b']);
    refused('a: [1\n', ['a']);
    refused('a: [x]\n', ['a', '4']);
  });
  it('sets any value anywhere without changing what else the file says', () => {
    const files = fc.constantFrom(
      file,
      file.replaceAll('\n', '\r\n'),
      'format: 1\ntitle: |\n  two\n  lines\nauthors:\n- a\n\n# c\n- b\n\n\nroles:\n  guide:\n    - g.md\n\n  parts: "p.csv"\n',
      '---\n{format: 1, authors: [a, b], roles: {}}\n',
      "title: 'it''s'\nauthors: # who\nskills:\n  # none\n",
    );
    const paths = fc.constantFrom<string[]>(
      ['title'],
      ['authors', '-'],
      ['authors'],
      ['skills', '-'],
      ['roles', 'guide'],
      ['roles', 'parts', '-'],
      ['roles', 'log'],
      ['licences', 'code'],
      ['accepted', '-'],
      ['supply'],
      ['format'],
      ['authors', '0'],
    );
    const words = fc.string({ maxLength: 20 });
    const values: fc.Arbitrary<SettingValue> = fc.oneof(
      words,
      fc.integer(),
      fc.boolean(),
      fc.array(words, { minLength: 1, maxLength: 3 }),
      fc.record({ finding: words, digests: fc.array(words, { minLength: 1, maxLength: 2 }) }),
    );
    let done = 0;
    fc.assert(
      fc.property(files, paths, values, (text, path, value) => {
        try {
          const after = parse(set(text, path, value)) as Record<string, unknown>;
          done++;
          const before = parse(text) as Record<string, unknown>;
          for (const key of Object.keys(before)) if (key !== path[0]) expect(after[key]).toEqual(before[key]);
          expect(JSON.stringify(after)).toContain(JSON.stringify(value));
        } catch (error) {
          if (!(error instanceof Failure)) throw error;
        }
      }),
      { numRuns: 300, seed: 30 },
    );
    expect(done).toBeGreaterThan(250);
  });
});
