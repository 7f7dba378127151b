import { describe, expect, it } from 'vitest';
import { evaluateMutants } from '../mutation/evaluateMutants.ts';
import { allMutants } from '../mutation/mutantsOf.ts';
import { figuresOf } from '../mutation/reportOf.ts';

describe('all mutants', () => {
  it('are mostly found where they show, and set off little else', { timeout: 900_000 }, async () => {
    const { share, others } = figuresOf(await evaluateMutants(allMutants()));
    expect(others).toBeLessThanOrEqual(0.2);
    expect(share).toBeGreaterThanOrEqual(0.95);
  });
});
