import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '#checks/judge.ts';
import { runs } from '../runs.ts';
import { judgedFrom } from './judgedFrom.ts';
import { lampTexts } from './lampTexts.ts';

/** Files in which a maker's slip can do most; the rest stay as they are. */
const damageable = [
  'guide.md',
  'parts.csv',
  'wiring.csv',
  'tools.csv',
  'firmware/pins.h',
  'firmware/main.cpp',
  'log.md',
];

const blow = fc.record({
  file: fc.constantFrom(...damageable),
  at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  does: fc.constantFrom('drop', 'double', 'cut', 'swap', 'empty'),
});

/** Drops, doubles, cuts or swaps the line at a share of the file, or empties the file. */
function struck(text: string, at: number, does: string): string {
  const lines = text.split('\n');
  const index = Math.floor(at * lines.length);
  const line = lines[index] ?? '';
  if (does === 'empty') return '';
  if (does === 'drop') lines.splice(index, 1);
  if (does === 'double') lines.splice(index, 0, line);
  if (does === 'cut') lines[index] = line.slice(0, line.length >> 1);
  if (does === 'swap') lines.splice(index, 2, lines[index + 1] ?? '', line);
  return lines.join('\n');
}

describe('a lamp with damaged files', () => {
  it(
    'is judged by every check, each finding by a name of its own, each place with the words that stand there',
    async () => {
      await fc.assert(
        fc.asyncProperty(fc.array(blow, { minLength: 1, maxLength: 8 }), async (blows) => {
          const texts = new Map(lampTexts);
          for (const { file, at, does } of blows) texts.set(file, struck(texts.get(file) ?? '', at, does));
          const judged = await judgedFrom(Object.fromEntries(texts));
          const { findings, ran } = judge(judged);
          expect(ran.filter(({ outcome }) => outcome === 'failed')).toEqual([]);
          expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
          for (const { check, sides } of findings) {
            expect(sides.length).toBeGreaterThan(0);
            for (const { place } of sides) {
              // The words of a secret are masked.
              if (place.kind !== 'text' || check === 'secret-in-files') continue;
              const text = (texts.get(place.file) ?? '').slice(...place.span);
              expect(text).toBe(place.quote);
            }
          }
        }),
        { seed: 20_260_102, numRuns: runs(12) },
      );
    },
    runs(180_000),
  );
});
