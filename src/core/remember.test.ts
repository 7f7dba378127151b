import { describe, expect, it } from 'vitest';
import { remember } from './remember.ts';

describe('remember', () => {
  it('computes each answer once, as long as it is asked for', () => {
    const asked: string[] = [];
    const length = remember((text) => asked.push(text) && text.length, 2);
    expect(['ab', 'c', 'ab', 'c'].map(length)).toEqual([2, 1, 2, 1]);
    expect(asked).toEqual(['ab', 'c']);
  });
  it('forgets what was not asked for lately, and keeps what was', () => {
    const asked: string[] = [];
    const length = remember((text) => asked.push(text) && text.length, 2);
    for (const text of ['a', 'b', 'a', 'c', 'a', 'd', 'e', 'a', 'b']) length(text);
    expect(asked).toEqual(['a', 'b', 'c', 'd', 'e', 'b']);
  });
  it('remembers that the answer was nothing', () => {
    let times = 0;
    const nothing = remember(() => {
      times++;
    });
    nothing('x');
    nothing('x');
    expect(times).toBe(1);
  });
});
