import { describe, expect, test } from 'vitest';
import type { Block, Inline } from '#core/text.ts';
import { assembled, link, paragraph, picture, place, section, shot, step } from '../../tests/site/smallBuild.ts';
import { composeGuide } from './composeGuide.ts';
import { everyBlock } from './everyBlock.ts';
import type { BodyBlock, Words } from './guide.ts';

const shots = [shot('a.jpg', 4000), shot('b.png', 700, 'png'), shot('c.mp4', null, 'clip')];
const files = [{ path: 'docs/outline.svg', bytes: 1 }];
const code = [{ path: 'firmware/main.cpp', language: 'cpp', text: '', withheld: 0 }];

/** The body of the only step, made of these blocks. */
function bodyOf(...blocks: Block[]): readonly BodyBlock[] {
  const sections = [section('how-it-works', 'prose', 2, paragraph('So.')), step('wire-it', ...blocks)];
  const guide = composeGuide(assembled({ sections, build: { shots, files } }), { code });
  const found = [...everyBlock(guide)].find((block) => block.kind === 'step');
  return found?.kind === 'step' ? found.body : [];
}

function wordsOf(...children: (string | Inline)[]): readonly Words[] {
  const [block] = bodyOf(paragraph(...children));
  return block?.kind === 'paragraph' ? block.words : [];
}

function outline(blocks: readonly BodyBlock[]): string[] {
  return blocks.map((block) => {
    if (block.kind === 'picture') return block.shot;
    return block.kind === 'paragraph'
      ? JSON.stringify(block.words.map((node) => ('value' in node ? node.value : node.kind)))
      : block.kind;
  });
}

describe('pictures in a text', () => {
  test('part it where they begin a line', () => {
    expect(outline(bodyOf(paragraph('Before.\n', picture('a.jpg'), '\nAfter.')))).toEqual([
      '["Before."]',
      'a.jpg',
      '["After."]',
    ]);
    expect(outline(bodyOf(paragraph(picture('a.jpg'), picture('b.png'), '\nAfter.')))).toEqual([
      'a.jpg',
      'b.png',
      '["After."]',
    ]);
  });

  test('follow it where they stand amid a sentence', () => {
    expect(outline(bodyOf(paragraph('Press ', picture('b.png'), ' twice.')))).toEqual([
      '["Press "," twice."]',
      'b.png',
    ]);
  });

  test('are found inside links, tables and lists, and leave no empty link behind', () => {
    const linked: Inline = { kind: 'link', url: 'https://example.org', children: [picture('a.jpg')] };
    expect(outline(bodyOf(paragraph(linked)))).toEqual(['a.jpg']);
    const table: Block = {
      kind: 'table',
      align: [null],
      header: [[picture('a.jpg')]],
      rows: [[[picture('b.png')]]],
      place: place('t'),
    };
    expect(outline(bodyOf(table))).toEqual(['table', 'a.jpg', 'b.png']);
    const items = [{ ticked: null, blocks: [paragraph('x\n', picture('a.jpg'))] }];
    const [list] = bodyOf({ kind: 'list', ordered: false, start: 1, items, place: place('l') });
    expect(list?.kind === 'list' && outline(list.items[0]?.body ?? [])).toEqual(['["x"]', 'a.jpg']);
  });

  test('say why they cannot be shown', () => {
    const reasons = bodyOf(
      paragraph(picture('lost.jpg', { exists: false })),
      paragraph(picture(null)),
      paragraph(picture('odd.jpg')),
      paragraph(picture('c.mp4')),
    ).map((block) => block.kind === 'missingPicture' && [block.why, block.wanted]);
    expect(reasons).toEqual([
      ['not-found', 'lost.jpg'],
      ['elsewhere', 'https://example.org/far.jpg'],
      ['unreadable', 'odd.jpg'],
      ['clip', 'c.mp4'],
    ]);
  });

  test('are described by the maker, else by their caption, else by where they belong', () => {
    const alts = bodyOf(
      paragraph(picture('a.jpg', { alt: ' the ring ', title: 'IN is left' })),
      paragraph(picture('a.jpg', { alt: '', title: 'IN is left' })),
      paragraph(picture('a.jpg', { alt: '' })),
    ).map((block) => block.kind === 'picture' && [block.alt, block.caption]);
    expect(alts).toEqual([
      ['the ring', 'IN is left'],
      ['IN is left', 'IN is left'],
      ['Picture to step 1, Wire it; its maker did not describe it', null],
    ]);
  });
});

describe('links in a text', () => {
  test.each([
    ['https://example.org/a', { kind: 'web', url: 'https://example.org/a' }],
    ['mailto:maker@example.org', { kind: 'web', url: 'mailto:maker@example.org' }],
    ['#wire-it', { kind: 'block', id: 'step-wire-it' }],
    ['guide.md#how-it-works', { kind: 'block', id: 'section-how-it-works' }],
    ['./firmware/../firmware/main.cpp', { kind: 'block', id: 'code-firmware/main.cpp' }],
    ['docs/outline.svg?raw', { kind: 'unpublished', path: 'docs/outline.svg' }],
  ])('%s leads where it says', (url, to) => {
    expect(wordsOf('see ', link(url))[1]).toEqual({ kind: 'link', to, children: [{ kind: 'text', value: 'here' }] });
  });

  test.each([
    'javascript:alert(1)',
    'JAVASCRIPT:x',
    'data:text/html,x',
    '//example.org',
    'https://a b',
    'lost.md',
    '#lost',
    '%E0%A4%A',
  ])('%s keeps its words and leads nowhere', (url) =>
    expect(wordsOf('see ', link(url))).toEqual([
      { kind: 'text', value: 'see ' },
      { kind: 'text', value: 'here' },
    ]),
  );
});

describe('quotations', () => {
  const quote = (...blocks: Block[]): Block => ({ kind: 'quote', blocks, place: place('q') });

  test.each([
    ['Danger: It kills.', 'danger'],
    ['NOTICE – It breaks.', 'notice'],
    ['Warning. It burns.', 'warning'],
  ])('%j is a caution', (text, word) => {
    expect(bodyOf(quote(paragraph(text)))).toMatchObject([{ kind: 'caution', word }]);
  });

  test.each(['Dangerous: not.', 'Careful: it kills.', 'Warning', 'A warning: no.'])('%j is not', (text) => {
    expect(bodyOf(quote(paragraph(text)))).toMatchObject([{ kind: 'quote' }]);
  });

  test('that hold more than words stay quotations', () => {
    const rule: Block = { kind: 'rule', place: place('-') };
    expect(bodyOf(quote(paragraph('Danger: It kills.'), rule))).toMatchObject([{ kind: 'quote' }]);
  });
});
