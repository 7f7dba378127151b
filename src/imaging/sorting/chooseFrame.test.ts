import { describe, expect, it } from 'vitest';
import { chooseFrame } from './chooseFrame.ts';

const frame = (id: string, focus: number, exposure = 0, clutter = 0.2) => ({ id, focus, exposure, clutter });

describe('the frame of a group to choose', () => {
  it('is the sharpest', () => {
    expect(chooseFrame([frame('soft', 0.3), frame('sharp', 0.9), frame('fair', 0.6)])).toEqual({
      id: 'sharp',
      reason: 'sharpest',
    });
  });

  it('is of equally sharp ones the best exposed, of these the clearest, of these the first', () => {
    expect(chooseFrame([frame('dark', 0.9, -0.9), frame('right', 0.85, 0.1)]).reason).toBe('best-exposed');
    expect(chooseFrame([frame('dark', 0.9, -0.9), frame('right', 0.85, 0.1)]).id).toBe('right');
    expect(chooseFrame([frame('full', 0.9, 0, 0.7), frame('clear', 0.85, 0.1, 0.1)])).toEqual({
      id: 'clear',
      reason: 'clearest',
    });
    expect(chooseFrame([frame('one', 0.9), frame('two', 0.9)])).toEqual({ id: 'one', reason: 'first' });
    expect(chooseFrame([frame('one', 0.9)])).toEqual({ id: 'one', reason: 'only' });
  });

  it('is not a spoilt exposure while a usable frame is there', () => {
    expect(chooseFrame([frame('night', 0.9, -2.1), frame('day', 0.6, 0.2)])).toEqual({
      id: 'day',
      reason: 'best-exposed',
    });
    expect(chooseFrame([frame('night', 0.9, -2.1), frame('blur', 0.2, 0.2)]).id).toBe('night');
    expect(chooseFrame([frame('night', 0.9, -2.1), frame('later', 0.9, -1.5)]).id).toBe('later');
  });
});
