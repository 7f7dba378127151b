import { describe, expect, it } from 'vitest';
import { capacitorCodeTolerance, parseCapacitorCode } from './capacitorCode.ts';

describe('parseCapacitorCode', () => {
  it('takes 8 and 9 for hundredths and tenths', () => {
    expect(parseCapacitorCode('478')?.si).toBe(0.47e-12);
    expect(parseCapacitorCode('479')?.si).toBe(4.7e-12);
  });
  it.each(['107', '004', '010', '10', '1044', '104k', '104X', '4R', 'R', '47n', ''])(
    'reads no code in “%s”',
    (text) => {
      expect(parseCapacitorCode(text)).toBeNull();
    },
  );
  it('reads R as the decimal point', () => {
    expect(parseCapacitorCode('R47')?.si).toBe(0.47e-12);
    expect(parseCapacitorCode('0R5')?.si).toBe(0.5e-12);
  });
  it('knows a tolerance only by a letter that is a share of the value', () => {
    expect(capacitorCodeTolerance('104K')).toBe(0.1);
    expect(capacitorCodeTolerance('104')).toBeNull();
    expect(capacitorCodeTolerance('104Z')).toBeNull();
    expect(capacitorCodeTolerance('K')).toBeNull();
  });
});
