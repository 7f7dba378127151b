import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slugOf, uniqueSlug } from './slug.ts';

describe('slugOf', () => {
  it.each([
    ['Wire the ring', 'wire-the-ring'],
    ['Größe & Maß', 'grosse-mass'],
    ['Œuvre d’été', 'oeuvre-dete'],
    ['Ночной й', 'ночной-й'],
    ['がいど', 'がいど'],
    ['한글', '한글'],
    ['हिन्दी', 'हिन्दी'],
    ['3.3 V rail', '3-3-v-rail'],
    ["the builder's lamp", 'the-builders-lamp'],
    ['!!!', 'untitled'],
    ['', 'untitled'],
  ])('names “%s” %s', (text, slug) => {
    expect(slugOf(text)).toBe(slug);
  });

  it('gives a slug that is its own slug, never empty, without a hyphen at an end', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const slug = slugOf(text);
        expect(slugOf(slug)).toBe(slug);
        expect(slug).toMatch(/^[^\s-](?:.*[^\s-])?$/su);
      }),
      { seed: 13, numRuns: 500 },
    );
  });
});

describe('uniqueSlug', () => {
  it('takes the parent along for a repeat, then a letter, never a number', () => {
    const taken = new Set<string>();
    const names = Array.from({ length: 4 }, () => {
      const slug = uniqueSlug('Test it', taken, 'The lamp');
      taken.add(slug);
      return slug;
    });
    expect(names).toEqual(['test-it', 'the-lamp-test-it', 'the-lamp-test-it-b', 'the-lamp-test-it-c']);
  });
  it('never gives a slug that is taken', () => {
    const taken = new Set<string>();
    for (let i = 0; i < 1000; i++) {
      const slug = uniqueSlug('a', taken);
      expect(taken.has(slug)).toBe(false);
      taken.add(slug);
    }
  });
});
