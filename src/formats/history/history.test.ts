import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Change } from '#core/change.ts';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { formatChange, readHistory } from './history.ts';

const sourceOf = (text: string): SourceText => ({
  file: 'history.jsonl',
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});
const ring: Change = { key: 'part:R1', digest: '0123456789abcdef', firstSeen: '2026-03-01T19:30:00Z' };
const wire: Change = {
  key: 'connection:R1.2~U1.D5',
  digest: 'fedcba9876543210',
  firstSeen: '2026-03-02T20:00:00.250Z',
};

describe('readHistory', () => {
  it('reads back what formatChange writes', () => {
    expect(readHistory(sourceOf(`${formatChange(ring)}\n${formatChange(wire)}\n`))).toEqual({
      changes: [ring, wire],
      problems: [],
    });
  });
  it('reads the whole lines before a torn last one, and says that it is incomplete', () => {
    const text = `${formatChange(ring)}\n${formatChange(wire).slice(0, 30)}`;
    const { changes, problems } = readHistory(sourceOf(text));
    expect(changes).toEqual([ring]);
    expect(problems.map(({ message }) => message)).toEqual([
      expect.stringContaining('last line of the history is incomplete'),
    ]);
    expect(problems[0]?.place).toMatchObject({ line: 2, column: 1 });
  });
  it('reads the lines after a bad one', () => {
    const { changes, problems } = readHistory(sourceOf(`nonsense\r\n\r\n${formatChange(wire)}`));
    expect(changes).toEqual([wire]);
    expect(problems).toHaveLength(1);
  });
  it.each([
    '{"key":"R1","digest":"a","firstSeen":"2026-03-01"}',
    '{"key":"part:R1","digest":7,"firstSeen":"2026-03-01"}',
    '{"key":"part:R1","digest":"a","firstSeen":"last week"}',
    '{"key":"part:R1","digest":"a","firstSeen":"2026-13-45"}',
    '[]',
    'null',
  ])('takes %s for no change', (line) => {
    expect(readHistory(sourceOf(`${line}\n`)).changes).toEqual([]);
  });
  it('never throws, and accounts for every line that is not blank', () => {
    const line = fc.oneof(fc.json(), fc.string(), fc.constant(formatChange(ring)));
    fc.assert(
      fc.property(fc.array(line), (lines) => {
        const text = lines.join('\n');
        const { changes, problems } = readHistory(sourceOf(text));
        const full = text.split(/\r\n|\r|\n/).filter((each) => each.trim() !== '');
        expect(changes.length + problems.length).toBe(full.length);
        for (const { place } of problems) {
          if (place.kind === 'text') expect(text.slice(...place.span)).toBe(place.quote);
        }
      }),
      { numRuns: 500, seed: 5 },
    );
  });
});
