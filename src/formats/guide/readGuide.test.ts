import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TextPlace } from '#core/place.ts';
import { lineStartsOf, placeOf, type SourceText } from '#core/sourceText.ts';
import type { Section } from '#core/step.ts';
import { type Block, plainText } from '#core/text.ts';
import { type GuideOptions, readGuide } from './readGuide.ts';

function source(text: string, file = 'guide.md'): SourceText {
  return { file, text, encoding: 'utf-8', bom: false, hash: '', lineStarts: lineStartsOf(text) };
}

function read(text: string, options: Partial<GuideOptions> = {}) {
  return readGuide([source(text)], { fileExists: () => null, ...options });
}

function step(text: string, id: string): Section {
  const section = read(text).instructions.sections.find((one) => one.id === id);
  if (section === undefined) throw new Error(`no section ${id}`);
  return section;
}

const lamp = `---
title: From the head
---
# Desk lamp

A small lamp.

## Parts

- 1 × ring

## Fit the ring
- Parts: H1, R1
- **Tools:** soldering iron
- code: \`firmware/__init__.py\` → U1
- Warning: The iron is hot.

Solder R1 to IN.

![R1 stands upright](photos/a%20b.jpg "Arrow away from IN")

### Look closely

The arrow points away.

## Close the lid
- Parts: lid

## Licence

Yours.
`;

describe('readGuide', () => {
  it.each([
    ['# Welcome\n\nHello.\n', null],
    ['# Parts list\n\n- ring\n', null],
    ['# Welcome lamp\n\nHello.\n', 'Welcome lamp'],
  ])('takes the title of %j for %s: a greeting or the name of a list names no build', (text, title) => {
    expect(read(text).instructions.title).toBe(title);
  });

  it('gives each heading its role and the title of the first of depth 1', () => {
    const { instructions, problems } = read(lamp);
    expect(instructions.title).toBe('Desk lamp');
    expect(instructions.sections.map(({ id, role, depth, parents }) => [id, role, depth, parents])).toEqual([
      ['desk-lamp', 'title', 1, []],
      ['parts', 'parts', 2, ['Desk lamp']],
      ['fit-the-ring', 'step', 2, ['Desk lamp']],
      ['look-closely', 'prose', 3, ['Desk lamp', 'Fit the ring']],
      ['close-the-lid', 'step', 2, ['Desk lamp']],
      ['licence', 'prose', 2, ['Desk lamp']],
    ]);
    expect(problems).toEqual([]);
  });

  it('takes the values of facts from the source, where underscores are no emphasis', () => {
    const { facts, blocks } = step(lamp, 'fit-the-ring');
    expect(facts.map(({ label, value }) => [label, value])).toEqual([
      ['parts', 'H1, R1'],
      ['tools', 'soldering iron'],
      ['code', '`firmware/__init__.py` → U1'],
      ['warning', 'The iron is hot.'],
    ]);
    expect(facts.map(({ place }) => [place.line, place.column, place.quote])).toEqual([
      [13, 10, 'H1, R1'],
      [14, 14, 'soldering iron'],
      [15, 9, '`firmware/__init__.py` → U1'],
      [16, 12, 'The iron is hot.'],
    ]);
    expect(blocks.map(({ kind }) => kind)).toEqual(['paragraph', 'paragraph']);
  });

  it('keeps characters that an inline parser would drop', () => {
    const { facts } = step('## Wire it\n- Connects: U2.~OE~ – U2.D[0], U1.__A__ – R1.1\n', 'wire-it');
    expect(facts[0]?.value).toBe('U2.~OE~ – U2.D[0], U1.__A__ – R1.1');
  });

  it('knows labels in German, French and Spanish', () => {
    const labels = (list: string) => step(`## Fit it\n- Parts: R1\n${list}`, 'fit-it').facts.map(({ label }) => label);
    expect(labels('- Werkzeuge: Zange\n- Vorsicht: heiß\n- Dauer: 5 min\n')).toEqual([
      'parts',
      'tools',
      'caution',
      'time',
    ]);
    expect(labels('- Pièces : R2\n- Durée : 5 min\n')).toEqual(['parts', 'parts', 'time']);
    expect(labels('- Piezas: R2\n- Peligro: alta tensión\n')).toEqual(['parts', 'parts', 'danger']);
  });

  it('reads a list with one unknown label as a plain list, and names the item', () => {
    const text = '## Fit R1\n- Parts: R1\n- Time: 5 min\n- Mood: calm\n\nSolder R1.\n';
    const { instructions, problems } = read(text);
    expect(instructions.sections[0]).toMatchObject({ role: 'step', facts: [], blocks: [{ kind: 'list' }, {}] });
    expect(problems).toHaveLength(1);
    expect(problems[0]?.place).toMatchObject({ line: 4, quote: 'Mood: calm' });
  });

  it('says nothing of a list that merely has one label in it', () => {
    const { problems } = read('## Fit R1\n- Solder R1.\n- Cut its leads.\n- Notice: they fly.\n');
    expect(problems).toEqual([]);
  });

  it('says where the rest of a fact is not read', () => {
    const { instructions, problems } = read('## Fit R1\n- Parts: R1\n- Warning: The iron\n  is hot.\n');
    expect(instructions.sections[0]?.facts[1]?.value).toBe('The iron');
    expect(problems.map(({ place }) => (place as TextPlace).line)).toEqual([3]);
  });

  it('makes steps of the sections under a heading such as Assembly, and not of those beside it', () => {
    const text =
      '# Box\n\n## How it sounds\n\n![wave](a.png)\n\n## Assembly\n\n### The base\n\nText.\n\n### The lid\n\nText.\n\n### Assembly complete\n\nText.\n\n## Troubleshooting\n\n### Check the fuse\n\nReplace the fuse.\n';
    expect(rolesIn(text, 'step')).toEqual(['The base', 'The lid']);
  });

  it('makes a step of a heading that gathers others only where it tells something itself', () => {
    const rest = '## Solder the jack\n\nSolder it.\n\n## Mount the board\n\nMount it.\n';
    expect(rolesIn(`## Assembly\n\n### A tip\n\nGlue is slow.\n\n${rest}`, 'step')).not.toContain('Assembly');
    expect(
      rolesIn(`## Assembly\n\nPush it in. Cut it. Press it on.\n\n### A tip\n\nGlue is slow.\n\n${rest}`, 'step'),
    ).toEqual(['Assembly', 'Solder the jack', 'Mount the board']);
  });

  it('finds steps by what their headings and texts tell somebody to do', () => {
    const text =
      '# Box\n\n## Wiring diagram\n\n![diagram](a.png)\n\n## Solder the jack\n\nText.\n\n## The switch\n\n![switch](b.jpg)\n\n## Mount the board\n\nText.\n\n## Power supply\n\nIt gives 5 V.\n';
    expect(rolesIn(text, 'step')).toEqual(['Solder the jack', 'The switch', 'Mount the board']);
  });

  it('takes numbered headings of depth 1 for steps, and none of them for the title', () => {
    const text = '# Step 1: The base\n\nText.\n\n# Step 2: The lid\n\nText.\n';
    expect(rolesIn(text, 'step')).toEqual(['Step 1: The base', 'Step 2: The lid']);
    expect(read(text).instructions.sections.map(({ id }) => id)).toEqual(['the-base', 'the-lid']);
  });

  it('finds no steps in a page of shop links', () => {
    const text =
      '# Sourcing\n\n## Boards\n\n- [Board one](https://shop.example/1)\n- [Board two](https://shop.example/2)\n\n## Other parts\n\n- [Knob](https://shop.example/3)\n';
    expect(rolesIn(text, 'step')).toEqual([]);
  });

  it('takes every section of a given depth for a step, save those named otherwise', () => {
    const text = '# Box\n\n## Tools\n\nA saw.\n\n## The base\n\nText.\n\n### Detail\n\nText.\n';
    const { instructions } = read(text, { stepDepth: 2 });
    expect(instructions.sections.map(({ role }) => role)).toEqual(['title', 'tools', 'step', 'prose']);
  });

  it('takes the parent heading along for a repeat, and no number of the heading', () => {
    const text = '# Box\n\n## Base\n\n### 1. Sand it\n\n## Lid\n\n### 1. Sand it\n';
    expect(read(text).instructions.sections.map(({ id }) => id)).toEqual([
      'box',
      'base',
      'sand-it',
      'lid',
      'lid-sand-it',
    ]);
  });

  it('reads several files in the order given, with ids that differ', () => {
    const { instructions } = readGuide(
      [source('# Base\n\n## Notes\n', 'guide/1.md'), source('# Lid\n\n## Notes\n', 'guide/2.md')],
      {
        fileExists: () => null,
      },
    );
    expect(instructions.sections.map(({ file, id }) => [file, id])).toEqual([
      ['guide/1.md', 'base'],
      ['guide/1.md', 'notes'],
      ['guide/2.md', 'lid'],
      ['guide/2.md', 'lid-notes'],
    ]);
  });

  it('gives the text before any heading its file as name, and never takes a heading’s id for it', () => {
    const { sections } = read('Hello.\n\n## Guide\n\nText.\n').instructions;
    expect(sections.map(({ id, depth, heading }) => [id, depth, heading])).toEqual([
      ['opening-guide', 0, ''],
      ['guide', 2, 'Guide'],
    ]);
  });

  it('signs a section by its content, whatever its heading and line ends', () => {
    const one = read('## Fit R1\n\nSolder it.\n').instructions.sections[0]?.signature;
    expect(read('## Place R1\r\n\r\nSolder it.\r\n').instructions.sections[0]?.signature).toBe(one);
    expect(read('## Fit R1\n\nSolder them.\n').instructions.sections[0]?.signature).not.toBe(one);
  });

  it('resolves links and pictures by reference across sections, past attribute lines of site generators', () => {
    const text =
      '## Fit R1\n\nSee [the notes][n]{: .wide } and [more][m].\n\n![ring][p]\n\n## Links\n\n[n]: notes.md\n{: target="_blank"}\n[m]: <{{ site.root }}/more.html> "More"\n{: target="_blank"}\n[p]: ring.jpg\n';
    const { blocks, pictures } = step(text, 'fit-r1');
    expect(words(blocks)).toBe('See the notes and more.\nring');
    expect(JSON.stringify(blocks)).toContain('{{ site.root }}/more.html');
    expect(pictures.map(({ url, path }) => [url, path])).toEqual([['ring.jpg', 'ring.jpg']]);
  });

  it('keeps template targets with blanks as links and finds the picture behind them', () => {
    const { sections } = read('## Fit R1\n\n![ring]({{ site.root }}/photos/ring.jpg)\n', {
      fileExists: (path) => (path === 'photos/ring.jpg' ? path : null),
    }).instructions;
    expect(sections[0]?.pictures[0]).toMatchObject({
      url: '{{ site.root }}/photos/ring.jpg',
      path: 'photos/ring.jpg',
      exists: true,
    });
  });

  it('reads HTML by its words, pictures, links and headings', () => {
    const text =
      '<h2 align="center">Fit <b>R1</b></h2>\n\n<p>Hold it<br>with <a href="a.md">pliers</a> at 20&nbsp;&deg;C.</p>\n<img src="b.jpg" alt="R1">\n\n<!-- hidden -->\n\nPress <kbd>Enter</kbd><script>alert(1)</script>.\n';
    const [section] = read(text).instructions.sections;
    expect(section?.heading).toBe('Fit R1');
    expect(section?.pictures.map(({ url, alt }) => [url, alt])).toEqual([['b.jpg', 'R1']]);
    expect(words(section?.blocks ?? [])).toBe('Hold it\nwith pliers at 20\u00a0°C.\nR1\nPress Enter.');
  });

  it('places what follows emoji, tabs and CRLF exactly', () => {
    const text = '## Fit 🔧\r\n\r\n-\tParts: R1 🔧\r\n\r\n😀 ![x](a.jpg) end\r\n';
    const { facts, pictures, place } = step(text, 'fit');
    expect([place.line, place.column, place.quote]).toEqual([1, 4, 'Fit 🔧']);
    expect([facts[0]?.place.line, facts[0]?.place.column, facts[0]?.place.quote]).toEqual([3, 10, 'R1 🔧']);
    expect([pictures[0]?.place.line, pictures[0]?.place.column, pictures[0]?.place.quote]).toEqual([
      5,
      4,
      '![x](a.jpg)',
    ]);
  });

  it('never throws, and every place quotes what stands there', () => {
    const piece = fc.constantFrom(
      '# A',
      '## Steps',
      '### Fit R1',
      '- Parts: R1',
      '- **Time**: 5 min',
      '* Warning: hot',
      '\n',
      '\r\n',
      '\r',
      '\n\n',
      '\t',
      '  ',
      '> ',
      '![a](b.jpg "c")',
      '[x][y]',
      '[y]: z',
      '```',
      '| a | b |\n| - | - |\n| c | d |',
      '<img src=x>',
      '<b>',
      '</b>',
      '{: .x }',
      '{{ a b }}',
      '---\n',
      '\ufeff',
      '\0',
      '😀',
      '[^1]',
      '[^1]: note',
      '1. one',
      'Setext\n===',
      '\\',
      '&amp;',
      '<!--',
      '%20',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(piece, fc.string()), { maxLength: 40 }), (pieces) => {
        const text = source(pieces.join(''));
        const { instructions, problems } = readGuide([text], { fileExists: (path) => path });
        const ids = instructions.sections.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        for (const place of [
          ...instructions.sections.flatMap(placesOf),
          ...problems.map((one) => one.place as TextPlace),
        ]) {
          expect(place).toEqual(placeOf(text, place.span));
        }
      }),
      { seed: 5, numRuns: 400 },
    );
  });

  it('reads any broken copy of a guide with exact places', () => {
    fc.assert(
      fc.property(fc.nat(lamp.length), fc.nat(20), fc.string({ maxLength: 4 }), (at, length, put) => {
        const text = source(lamp.slice(0, at) + put + lamp.slice(at + length));
        const { sections } = readGuide([text], { fileExists: () => null }).instructions;
        for (const place of sections.flatMap(placesOf)) expect(text.text.slice(...place.span)).toBe(place.quote);
      }),
      { seed: 6, numRuns: 120 },
    );
  });
});

function rolesIn(text: string, wanted: Section['role']): string[] {
  return read(text)
    .instructions.sections.filter(({ role }) => role === wanted)
    .map(({ heading }) => heading);
}

function words(blocks: readonly Block[]): string {
  return blocks.map((block) => (block.kind === 'paragraph' ? plainText(block.children) : '')).join('\n');
}

function placesOf({ place, facts, pictures, blocks }: Section): TextPlace[] {
  return [
    place,
    ...facts.map((fact) => fact.place),
    ...pictures.map((picture) => picture.place),
    ...blocks.flatMap(placesOfBlock),
  ];
}

function placesOfBlock(block: Block): TextPlace[] {
  if (block.kind === 'list') return [block.place, ...block.items.flatMap((item) => item.blocks.flatMap(placesOfBlock))];
  return block.kind === 'quote' ? [block.place, ...block.blocks.flatMap(placesOfBlock)] : [block.place];
}
