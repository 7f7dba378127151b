import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { maskUnread } from './maskUnread.ts';

const source = (text: string, file = 'guide.md'): SourceText => ({
  file,
  text,
  encoding: 'utf-8',
  bom: false,
  hash: '',
  lineStarts: lineStartsOf(text),
});
const kept = (text: string, file?: string) => maskUnread(source(text, file)).split(/\s+/).filter(Boolean);

describe('maskUnread', () => {
  it('blanks code, comments and addresses of Markdown and keeps the prose', () => {
    expect(kept('a `b` c')).toEqual(['a', 'c']);
    expect(kept('a ``b ` b`` c')).toEqual(['a', 'c']);
    expect(kept('a\n```cpp\nb\n```\nc')).toEqual(['a', 'c']);
    expect(kept('a\n~~~\nb\n```\nb\n~~~\nc')).toEqual(['a', 'c']);
    expect(kept('a\n```\nb never closed')).toEqual(['a']);
    expect(kept('a <!-- b\nb --> c')).toEqual(['a', 'c']);
    expect(kept('a [c](b/d.png) e')).toEqual(['a', '[c](', ')', 'e']);
    expect(kept('a https://b.example/TODO c')).toEqual(['a', 'c']);
  });
  it('keeps backticks that close nothing', () => {
    expect(kept('a ` b')).toEqual(['a', '`', 'b']);
  });
  it('keeps offsets and lines as they are', () => {
    const text = 'a `b`\r\n```\nb\n```\nc TODO';
    expect(maskUnread(source(text))).toHaveLength(text.length);
    expect(maskUnread(source(text)).indexOf('TODO')).toBe(text.indexOf('TODO'));
  });
  it('takes the backticks of a table file for what they are', () => {
    expect(kept('R1,`x`', 'parts.csv')).toEqual(['R1,`x`']);
  });
});
