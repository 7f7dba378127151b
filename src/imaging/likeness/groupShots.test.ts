import { describe, expect, it } from 'vitest';
import { type DatedShot, groupShots } from './groupShots.ts';
import type { Likeness } from './likenessOf.ts';

const layout = Array.from({ length: 48 }, (_, i) => 40 + i);
const shot = (id: string, time: number | null, hash = '0123456789abcdef'): DatedShot => ({
  id,
  time,
  signature: { hash, layout },
});

/** Shots are the same where their names begin alike, `b` shows `a` with more on it. */
function byName(asked: string[] = []) {
  return (a: string, b: string): Likeness['kind'] => {
    asked.push(`${a}${b}`);
    if (a[0] === b[0]) return 'same';
    return 'ab'.includes(a[0] ?? '') && 'ab'.includes(b[0] ?? '') ? 'progress' : 'other';
  };
}

describe('groups of shots', () => {
  it('hold what is the same, in order of time, and leave out what stands alone', async () => {
    const shots = [shot('c1', 900), shot('a2', 4), shot('a1', 0), shot('b1', 60), shot('b2', 63)];
    expect(await groupShots(shots, byName())).toEqual([
      ['a1', 'a2'],
      ['b1', 'b2'],
    ]);
  });

  it('are not joined by a blurred frame that looks like two states', async () => {
    const blurred = (a: string, b: string) => (a === 'x' || b === 'x' ? 'same' : byName()(a, b));
    const groups = await groupShots([shot('a1', 0), shot('x', 2), shot('b1', 5), shot('b2', 7)], blurred);
    expect(groups.some((group) => group.includes('a1') && group.includes('b1'))).toBe(false);
  });

  it('ask of each pair at most once, and not of shots that look otherwise from afar', async () => {
    const asked: string[] = [];
    const far = shot('a9', 5000, 'fedcba9876543210');
    expect(await groupShots([shot('a1', 0), shot('a2', 1), shot('a3', null), far], byName(asked))).toEqual([
      ['a1', 'a2', 'a3'],
    ]);
    expect(new Set(asked).size).toBe(asked.length);
    expect(asked.some((pair) => pair.includes('a9'))).toBe(false);
  });
});
