import { describe, expect, test } from 'vitest';
import { fragmentUrl, isSafeUrl, relativeUrl } from './safeUrl.ts';

describe('isSafeUrl', () => {
  test.each([
    'https://example.org/a?b=c#d',
    'http://example.org',
    'mailto:maker@example.org',
    'pictures/a.jpg',
    '#step-1',
    'a#b:c',
  ])('%s may be published', (url) => expect(isSafeUrl(url)).toBe(true));

  test.each([
    'javascript:alert(1)',
    'JavaScript:alert(1)',
    'java\nscript:alert(1)',
    '\u0001javascript:alert(1)',
    ' javascript:alert(1)',
    'data:text/html,<script>',
    'vbscript:x',
    'file:///etc/passwd',
    '//example.org/a',
    '\\\\example.org\\a',
    '/absolute',
    'https:///no-host',
    '',
  ])('%j may not', (url) => expect(isSafeUrl(url)).toBe(false));
});

describe('addresses of our own', () => {
  test('a path keeps its slashes and nothing else that means something in an address', () => {
    expect(relativeUrl('code/a b/50%?#.ino')).toBe('code/a%20b/50%25%3F%23.ino');
    expect(isSafeUrl(relativeUrl('javascript:x'))).toBe(true);
  });

  test('half a surrogate pair is written as the replacement character instead of failing', () => {
    expect(fragmentUrl('a\ud800')).toBe('#a%EF%BF%BD');
  });
});
