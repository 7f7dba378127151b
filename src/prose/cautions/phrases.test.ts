import { describe, expect, it } from 'vitest';
import { phrasesOf } from './phrases.ts';

const finds = (phrase: string, words: string) => {
  const found = phrasesOf([phrase]).find(words);
  return found === null ? null : words.slice(found.start, found.end);
};

describe('phrasesOf', () => {
  it('takes blanks and hyphens for one, and plurals along', () => {
    expect(finds('hot air', 'Take the hot-air gun')).toBe('hot-air');
    expect(finds('li po', 'two LiPos')).toBe('LiPos');
  });
  it('finds whole words only', () => {
    expect(finds('iron', 'a soldering iron.')).toBe('iron');
    expect(finds('iron', 'the environment')).toBeNull();
  });
  it('knows endings and digits', () => {
    expect(finds('burn*', 'It burned me')).toBe('burned');
    expect(finds('cr20##', 'a CR2032 cell')).toBe('CR2032');
    expect(finds('cr20##', 'a CR20 cell')).toBeNull();
  });
  it('asks for all pieces, in any order, and shows the longest', () => {
    expect(finds('with + scalpel', 'a scalpel with a cap')).toBe('scalpel');
    expect(finds('with + scalpel', 'a scalpel')).toBeNull();
  });
});
