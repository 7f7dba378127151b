import { describe, expect, it } from 'vitest';
import { nameOfSection, withoutNumber } from './nameOfSection.ts';

describe('nameOfSection', () => {
  it.each([
    ['Bill of materials', 'parts'],
    ['2. Parts needed:', 'parts'],
    ['What you’ll need', 'parts'],
    ['Stückliste', 'parts'],
    ['Tools and materials', 'tools'],
    ['Required tools', 'tools'],
    ['Parts & tools', 'parts'],
    ['Steps', 'steps'],
    ['Build instructions', 'steps'],
    ['Warnings and disclaimers', 'prose'],
    ['Need help?', 'prose'],
    ['Assembly complete', 'prose'],
    ['License', 'prose'],
    ['Fußnoten', 'prose'],
  ])('takes %s for %s', (heading, name) => {
    expect(nameOfSection(heading)).toBe(name);
  });

  it.each(['Wire the ring', 'Fit the parts', 'First test', 'Check the tools', 'The base', ''])(
    'finds no name in %j',
    (heading) => {
      expect(nameOfSection(heading)).toBeNull();
    },
  );
});

describe('withoutNumber', () => {
  it('drops numbers that stand before a heading, and only those', () => {
    expect(withoutNumber('Step 3: Wire it')).toBe('Wire it');
    expect(withoutNumber('2.1 Wire it')).toBe('Wire it');
    expect(withoutNumber('3D printed parts')).toBe('3D printed parts');
    expect(withoutNumber('Step 4')).toBe('Step 4');
  });
});
