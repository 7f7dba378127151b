import { DOMParser } from '@xmldom/xmldom';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { element, formatDocument } from './html.ts';

const pieces = [
  '<',
  '>',
  '&',
  '"',
  "'",
  '</p>',
  '<script>',
  '&amp;',
  '<!--',
  ']]>',
  'Ω',
  '👩‍🔧',
  'a',
  ' ',
  '\u0000',
  '\u0007',
];

describe('element', () => {
  test('any text and attribute value is read back as it was written, less forbidden control characters', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces)), (chosen) => {
        const text = chosen.join('');
        const { markup } = element('p', { title: text }, text);
        const read = new DOMParser().parseFromString(markup, 'text/xml').documentElement;
        const kept = text.replaceAll('\u0000', '').replaceAll('\u0007', '');
        expect(read?.textContent).toBe(kept);
        expect(read?.getAttribute('title')).toBe(kept);
      }),
      { seed: 7 },
    );
  });

  test('an address with a scheme that runs code is left out, its words stay', () => {
    expect(element('a', { href: 'javascript:alert(1)' }, 'here').markup).toBe('<a>here</a>');
    expect(element('img', { src: 'data:text/html,x', alt: 'a board' }).markup).toBe('<img alt="a board"/>');
  });

  test('handlers, inline styles and scripts cannot be made', () => {
    expect(() => element('p', { onclick: 'x()' })).toThrow('Broken assumption');
    expect(() => element('p', { style: 'x' })).toThrow('Broken assumption');
    expect(() => element('script', {}, 'x()')).toThrow('Broken assumption');
    expect(() => element('p x', {})).toThrow('Broken assumption');
  });

  test('null and false leave an attribute or a child out, true writes it empty', () => {
    expect(element('a', { href: null, download: true, id: false }, null, false, 'x', 1).markup).toBe(
      '<a download="">x1</a>',
    );
  });

  test('a document begins with the doctype that browsers take for standards', () => {
    expect(formatDocument(element('html'))).toBe('<!DOCTYPE html>\n<html></html>\n');
  });
});
