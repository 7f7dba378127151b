import { describe, expect, test } from 'vitest';
import type { StepBlock } from '#guide/guide.ts';
import { workLine } from './workLine.ts';

function steps(...minutes: (readonly [hands: number, wait: number] | null)[]): StepBlock[] {
  return minutes.map((told, i) => ({
    kind: 'step',
    id: `step-${i}`,
    places: [],
    step: `${i}`,
    number: i + 1,
    heading: `Step ${i}`,
    level: 3,
    needs: { parts: [], tools: [], code: [], power: null },
    minutes: told && { hands: told[0], wait: told[1] },
    after: null,
    powered: i === 1,
    side: null,
    optional: null,
    variant: null,
    irreversible: null,
    makes: [],
    removes: [],
    joins: [],
    cautions: [],
    beforePower: [],
    body: [],
    checks: [],
    mistakes: [],
    errata: [],
    words: [],
  }));
}

describe('workLine', () => {
  test('a step of twice the time takes twice the length, and waiting takes none', () => {
    const line = workLine(steps([10, 0], [20, 600], [10, 0]));
    expect(line.scale).toBe('minutes');
    expect(line.spans.map(({ from, to }) => [from, to])).toEqual([
      [0, 0.25],
      [0.25, 0.75],
      [0.75, 1],
    ]);
    expect(line.spans.map(({ waits }) => waits)).toEqual([false, true, false]);
    expect(line.spans.map(({ powered }) => powered)).toEqual([false, true, false]);
  });

  test('a step of no time at all still has a length', () => {
    const [first] = workLine(steps([0, 0], [40, 0])).spans;
    expect(first?.to).toBeGreaterThan(0.1);
  });

  test('one step that does not tell its time makes all steps equally long', () => {
    const line = workLine(steps([10, 0], null, [500, 0], [1, 0]));
    expect(line.scale).toBe('steps');
    expect(line.spans.map(({ to }) => to)).toEqual([0.25, 0.5, 0.75, 1]);
  });

  test('no steps make a line without spans', () => {
    expect(workLine([])).toEqual({ scale: 'steps', spans: [] });
  });
});
