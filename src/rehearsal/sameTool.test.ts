import { describe, expect, it } from 'vitest';
import { sameTool } from './sameTool.ts';

describe('sameTool', () => {
  it('takes a shorter name and a plural for the same tool', () => {
    expect(sameTool('iron', 'Soldering iron, 350 °C')).toBe(true);
    expect(sameTool('side cutter', 'a pair of side cutters')).toBe(true);
  });
  it('does not take a word inside another for the tool', () => {
    expect(sameTool('saw', 'jigsaw blade')).toBe(false);
    expect(sameTool('crimping tool', 'soldering iron')).toBe(false);
    expect(sameTool('', 'soldering iron')).toBe(false);
  });
});
