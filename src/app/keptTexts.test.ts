import { describe, expect, it } from 'vitest';
import type { SourceText } from '#core/sourceText.ts';
import { keptTexts } from './keptTexts.ts';

function text(hash: string, words: string): SourceText {
  return { file: 'guide.md', text: words, encoding: 'utf-8', bom: false, hash, lineStarts: [0] };
}

describe('keptTexts', () => {
  it('gives back the very record that was read, for the same file and content alone', () => {
    const kept = keptTexts();
    const source = text('a', 'Solder R1.');
    kept.add(source);
    expect(kept.get('guide.md', 'a')).toBe(source);
    expect(kept.get('guide.md', 'b')).toBeNull();
    expect(kept.get('log.md', 'a')).toBeNull();
  });

  it('lets go of what nobody asks for, and keeps what is asked for', () => {
    const kept = keptTexts(20);
    const asked = text('asked', 'Solder R1.');
    kept.add(asked);
    kept.add(text('forgotten', 'Solder R2.'));
    for (let edit = 0; edit < 5; edit++) {
      kept.add(text(`edit ${edit}`, 'Solder R3.'));
      expect(kept.get('guide.md', 'asked')).toBe(asked);
    }
    expect(kept.get('guide.md', 'forgotten')).toBeNull();
  });
});
