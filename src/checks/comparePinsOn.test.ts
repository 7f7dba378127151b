import { describe, expect, it } from 'vitest';
import { comparePinsOn } from './comparePinsOn.ts';

describe('comparePinsOn', () => {
  it('takes a label for its number on boards that print it so', () => {
    expect(comparePinsOn('ESP32 development board', 'D5', '5')).toBe('same');
    expect(comparePinsOn('ESP32 development board', 'D5', '6')).toBe('different');
    expect(comparePinsOn('Nano with ATmega328P', 'D5', '5')).toBe('same');
  });
  // The variant header of ESP8266 boards in this form gives D5 = 14 and D1 = 5 (from memory).
  it('translates labels that are other numbers', () => {
    expect(comparePinsOn('ESP8266 module, NodeMCU form', 'D5', '14')).toBe('same');
    expect(comparePinsOn('ESP8266 module, NodeMCU form', 'D5', '5')).toBe('different');
    expect(comparePinsOn('ESP8266 module, NodeMCU form', 'GPIO5', 'D1')).toBe('same');
  });
  it('cannot tell on a board that it does not know', () => {
    expect(comparePinsOn('Controller board', 'D5', '5')).toBe('cannot-tell');
    expect(comparePinsOn('Nano board with ESP32', 'D5', '5')).toBe('cannot-tell');
  });
});
