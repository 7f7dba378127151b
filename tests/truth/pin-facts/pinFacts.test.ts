import { describe, expect, it } from 'vitest';
import { isThere, jobsAgainst, type PinFamily, pinFamilyOf } from '../../../src/checks/pinFacts.ts';
import type { PinUse } from '../../../src/core/code.ts';
import esp32 from './esp32.json';

function jobs(board: string, pin: number | string, use: PinUse) {
  return jobsAgainst(family(board), board, `${pin}`, [use]);
}

function family(board: string): PinFamily {
  const found = pinFamilyOf(board);
  if (found === null) throw new Error(`no family for ${board}`);
  return found;
}

describe('ESP32, against the summary table of its maker', () => {
  const board = 'ESP32-WROOM-32 board';
  const rows = esp32.rows as [number, string, string][];

  it('has the pins of the table and no others', () => {
    const there = Array.from({ length: 60 }, (_, pin) => pin).filter((pin) => isThere(family(board), `${pin}`));
    expect(there).toEqual(rows.map(([pin]) => pin));
  });
  it.each(rows)('GPIO%i (%s, %s)', (pin, analogue, comment) => {
    const halts = (use: PinUse) => jobs(board, pin, use).some(({ weight }) => weight === 'halts');
    const onModule = comment === 'SPI0/1' && pin < 16;
    expect(halts('output')).toBe(onModule || comment === 'GPI');
    expect(halts('input')).toBe(onModule);
    expect(halts('analogue-in')).toBe(onModule || analogue === '');
    expect(jobs(board, pin, 'analogue-in').some(({ when }) => when === 'wifi')).toBe(analogue === 'ADC2');
    expect(jobs(board, pin, 'input').some(({ when }) => when === 'pull-up')).toBe(comment === 'GPI');
    expect(jobs(board, pin, 'output').some(({ when }) => when === 'serial')).toBe(/^[TR]XD$/.test(comment));
    if (jobs(board, pin, 'input').some(({ weight }) => weight === 'tidy')) expect(comment).toBe('strapping');
  });
  it('keeps 16 and 17 for the memory of the larger module alone', () => {
    for (const pin of [16, 17]) {
      expect(jobs('ESP32-WROVER board', pin, 'output').map(({ weight }) => weight)).toEqual(['halts']);
      expect(jobs(board, pin, 'output')).toEqual([]);
    }
  });
});

describe('ESP8266, against the reference of its core', () => {
  const board = 'ESP8266 board';
  it.each([6, 7, 8, 11])('GPIO%i belongs to the flash memory', (pin) => {
    expect(jobs(board, pin, 'output').map(({ weight }) => weight)).toEqual(['halts']);
  });
  it.each([9, 10])('GPIO%i belongs to it on most modules', (pin) => {
    expect(jobs(board, pin, 'output').map(({ weight }) => weight)).toEqual(['slows']);
  });
  it('raises interrupts on every pin but 16, which has no pull-up', () => {
    const without = Array.from({ length: 17 }, (_, pin) => pin).filter((pin) =>
      jobs(board, pin, 'interrupt').some(({ says }) => says.includes('interrupts')),
    );
    expect(without).toEqual([16]);
    expect(jobs(board, 16, 'input').map(({ when }) => when)).toEqual(['pull-up']);
  });
});

describe('ATmega328P boards, against the language reference of the core', () => {
  it.each(['A6', 'A7'])('%s is analogue only', (pin) => {
    expect(jobs('Arduino Nano board', pin, 'input').map(({ weight }) => weight)).toEqual(['halts']);
    expect(jobs('Arduino Nano board', pin, 'analogue-in')).toEqual([]);
  });
  it.each(['A0', 'A5'])('%s serves as a digital pin too', (pin) => {
    expect(jobs('Arduino Nano board', pin, 'output')).toEqual([]);
  });
});

describe('RP2040, against a public list of its analogue channels', () => {
  it('reads voltages on 26 to 29 alone', () => {
    const pins = Array.from({ length: 30 }, (_, pin) => pin);
    expect(pins.filter((pin) => jobs('RP2040 board', pin, 'analogue-in').length === 0)).toEqual([26, 27, 28, 29]);
  });
});
