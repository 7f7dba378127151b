import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edit } from '#core/edit.ts';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { spliceText } from './applyEdit.ts';
import { changedRegions } from './changedRegions.ts';
import { mergeEdit } from './mergeEdit.ts';

const version = (text: string, hash: string): SourceText => ({
  file: 'parts.csv',
  text,
  encoding: 'utf-8',
  bom: false,
  hash,
  lineStarts: lineStartsOf(text),
});

const replacing = (text: string, words: string, by: string): Edit => {
  const at = text.indexOf(words);
  return { file: 'parts.csv', base: 'old', changes: [{ span: [at, at + words.length], text: by }], why: 'test' };
};

/** What both changes make of the older text; null where the edit cannot be carried over. */
function merged(older: string, newer: string, edit: Edit): string | null {
  const carried = mergeEdit(version(older, 'old'), version(newer, 'new'), edit);
  if (carried === null) return null;
  expect(carried).toMatchObject({ base: 'new', why: edit.why });
  return spliceText(newer, carried.changes);
}

const list = 'Ref,Qty\nR1,1\nR2,2\nR3,3\n';

describe('mergeEdit', () => {
  it('carries an edit over lines that were added, removed or changed elsewhere', () => {
    const edit = replacing(list, 'R2,2', 'R2,9');
    expect(merged(list, `# mine\n${list}C1,1\n`, edit)).toBe('# mine\nRef,Qty\nR1,1\nR2,9\nR3,3\nC1,1\n');
    expect(merged(list, list.replace('R1,1\n', ''), edit)).toBe('Ref,Qty\nR2,9\nR3,3\n');
    expect(merged(list, list.replace('R3,3', 'R3,330'), edit)).toBe('Ref,Qty\nR1,1\nR2,9\nR3,330\n');
  });
  it('carries an edit over another change in the same line where they do not touch', () => {
    expect(merged(list, list.replace('R2,2', 'R2,22k'), replacing(list, 'R2', 'R7'))).toBe(
      'Ref,Qty\nR1,1\nR7,22k\nR3,3\n',
    );
  });
  it('gives up where both change the same words', () => {
    expect(merged(list, list.replace('R2,2', 'R2,5'), replacing(list, 'R2,2', 'R2,9'))).toBeNull();
    expect(merged(list, list.replace('R2,2\n', ''), replacing(list, 'R2,2', 'R2,9'))).toBeNull();
  });
  it('gives up where both add at the same place', () => {
    const edit: Edit = {
      file: 'parts.csv',
      base: 'old',
      changes: [{ span: [list.length, list.length], text: 'C9,1\n' }],
      why: 'add',
    };
    expect(merged(list, `${list}C1,1\n`, edit)).toBeNull();
  });
  it('tells an edit beside lines that came or went from one among them', () => {
    expect(merged(list, list.replace('R2,2\n', 'C1,1\nR2,2\n'), replacing(list, 'R2,2', 'R2,9'))).toBe(
      'Ref,Qty\nR1,1\nC1,1\nR2,9\nR3,3\n',
    );
    expect(merged(list, list.replace('R2,2\n', 'C1,1\nR2,2\n'), replacing(list, 'R1,1\n', 'R9,9\n'))).toBe(
      'Ref,Qty\nR9,9\nC1,1\nR2,2\nR3,3\n',
    );
    expect(merged(list, list.replace('R2,2\n', 'C1,1\nR2,2\n'), replacing(list, '1\nR2', '7\nR8'))).toBeNull();
  });
  it('gives up where it cannot tell which of several like lines was meant', () => {
    const twice = 'x\nsame\nsame\ny\n';
    const edit: Edit = { file: 'parts.csv', base: 'old', changes: [{ span: [7, 11], text: 'other' }], why: 'test' };
    expect(merged(twice, 'x\nsame\nsame\nsame\ny\n', edit)).toBeNull();
    expect(merged(twice, 'x\nsame\ny\n', edit)).toBeNull();
  });
  it('refuses versions that do not belong together', () => {
    const edit = replacing(list, 'R1', 'R9');
    expect(mergeEdit(version(list, 'other'), version(list, 'new'), edit)).toBeNull();
    expect(mergeEdit(version(list, 'old'), { ...version(list, 'new'), file: 'b.csv' }, edit)).toBeNull();
  });
  it('gives the same whichever of two edits apart comes first', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', '1', ',', '\n', '🔧'), maxLength: 6 });
    const lines = fc.array(word, { minLength: 6, maxLength: 12 });
    let carriedOver = 0;
    fc.assert(
      fc.property(lines, fc.nat(), fc.nat(), word, word, (all, one, other, mine, theirs) => {
        const text = all.map((line, i) => `${i}:${line}`).join('\n');
        const starts = all.map((_, i) => text.indexOf(`${i}:`));
        const change = (at: number, by: string): Edit => {
          const start = starts[at % all.length] ?? 0;
          return { file: 'parts.csv', base: 'old', changes: [{ span: [start, start + 1], text: by }], why: 'test' };
        };
        const [a, b] = [change(one, `m${mine}`), change(other, `t${theirs}`)];
        const first = merged(text, spliceText(text, b.changes), a);
        const second = merged(text, spliceText(text, a.changes), b);
        if (first === null || second === null) return;
        carriedOver++;
        expect(first).toBe(second);
      }),
      { numRuns: 500, seed: 8 },
    );
    expect(carriedOver).toBeGreaterThan(300);
  });
});

describe('changedRegions', () => {
  it('leaves the same text between its regions', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'b', '\n', '\r', 'c'), maxLength: 40 });
    fc.assert(
      fc.property(text, text, (older, newer) => {
        let [old, now] = [0, 0];
        let rebuilt = '';
        for (const region of changedRegions(older, newer)) {
          expect(older.slice(old, region.old[0])).toBe(newer.slice(now, region.now[0]));
          rebuilt += older.slice(old, region.old[0]) + newer.slice(...region.now);
          [old, now] = [region.old[1], region.now[1]];
        }
        expect(rebuilt + older.slice(old)).toBe(newer);
      }),
      { numRuns: 1000, seed: 14 },
    );
  });
  it('finds one region for one changed line, and nothing in equal texts', () => {
    expect(changedRegions(list, list)).toEqual([]);
    expect(changedRegions(list, list.replace('R2,2', 'R2,7'))).toEqual([
      { old: [16, 17], now: [16, 17], wholeLines: false },
    ]);
  });
});
