import { describe, expect, it } from 'vitest';
import { library, wordingOf } from '#prose/cautions/library.ts';
import { tellsAvoidance, tellsHarm } from '#prose/cautions/messages.ts';
import { phrasesOf } from '#prose/cautions/phrases.ts';
import { isDangerousCharge, storedEnergy, touchOf } from '#prose/cautions/sums.ts';

describe('energy in a capacitor', () => {
  // E = ½CV², worked by hand for common parts; 0.25 J as a heavy shock from an institutional safety guide.
  it.each([
    [1000e-6, 25, 0.3125, false],
    [470e-6, 16, 0.06016, false],
    [220e-6, 200, 4.4, true],
    [100e-6, 400, 8, true],
    [330e-6, 330, 17.9685, true],
    [1, 5.5, 15.125, false],
    [10e-9, 630, 0.0019845, false],
  ])('of %d F at %d V is %d J', (farads, volts, joules, isDangerous) => {
    expect(storedEnergy(farads, volts)).toBeCloseTo(joules, 6);
    expect(isDangerousCharge(farads, volts)).toBe(isDangerous);
  });
});

describe('voltages to touch', () => {
  // IEC 61140 and IEC 60364-4-41: 25 V AC or 60 V DC without basic protection, dry; extra-low ends at 50 V AC, 120 V DC.
  it.each([
    [12, 'dc', 'harmless'],
    [60, 'dc', 'harmless'],
    [61, 'dc', 'dangerous'],
    [120, 'dc', 'dangerous'],
    [121, 'dc', 'as mains'],
    [25, 'ac', 'harmless'],
    [26, 'ac', 'dangerous'],
    [50, 'ac', 'dangerous'],
    [51, 'ac', 'as mains'],
    [230, 'ac', 'as mains'],
  ] as const)('%d V %s is %s', (volts, current, touch) => {
    expect(touchOf(volts, current)).toBe(touch);
  });
});

describe('the library', () => {
  // Signal words by the meanings in ANSI Z535.4: death or serious injury WARNING, minor injury CAUTION, none NOTICE.
  it.each([
    ['mains', 'warning', 'licensed-person'],
    ['lithium', 'warning', 'data-sheet'],
    ['charged-capacitor', 'warning', 'data-sheet'],
    ['laser-strong', 'warning', 'local-rule'],
    ['uv-c', 'warning', 'local-rule'],
    ['laser-3r', 'caution', 'data-sheet'],
    ['hot-iron', 'caution', 'local-rule'],
    ['hot-air', 'caution', 'local-rule'],
    ['high-current', 'warning', 'data-sheet'],
    ['motor', 'caution', 'data-sheet'],
    ['esd', 'notice', 'data-sheet'],
  ])('asks for %s at least %s, and leaves the rest to the %s', (id, word, level) => {
    const entry = library.find((one) => one.id === id);
    expect(entry?.word).toBe(word);
    expect(entry?.defer).toContain(level);
  });
  it.each(library.map((entry) => [entry.id, entry] as const))(
    'words %s in the order hazard, consequence, avoidance',
    (_, entry) => {
      expect(wordingOf(entry).startsWith(`${entry.hazard} ${entry.consequence} ${entry.avoid}`)).toBe(true);
      expect(tellsHarm(entry.consequence)).toBe(true);
      expect(tellsAvoidance(entry.avoid)).toBe(true);
      expect(phrasesOf(entry.speaksOf).find(wordingOf(entry))).not.toBeNull();
      expect(entry.defer.length).toBeGreaterThan(0);
      expect(entry.source).not.toBe('');
      if (entry.protect !== null) expect(phrasesOf(entry.protect.words).find(entry.protect.wear)).not.toBeNull();
    },
  );
});
