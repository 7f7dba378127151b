import { describe, expect, it } from 'vitest';
import { headingRanks } from './headingRanks.ts';

describe('headingRanks', () => {
  it('skips no rank where the maker skipped depths', () => {
    expect(headingRanks([1, 3, 4, 2, 6], 2)).toEqual([2, 3, 4, 3, 4]);
  });

  it('takes text before any heading, of depth 0, like a heading of its own', () => {
    expect(headingRanks([0, 2, 0, 0, 3], 2)).toEqual([2, 3, 2, 2, 3]);
  });

  it('goes no lower than 6', () => {
    expect(headingRanks([1, 2, 3, 4, 5, 6], 4)).toEqual([4, 5, 6, 6, 6, 6]);
  });
});
