import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { noSettings } from '#core/settings.ts';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { readFrontMatter, readSettings } from './readSettings.ts';

const sourceOf = (text: string, file = 'twicebuilt.yaml'): SourceText => ({
  file,
  text,
  encoding: 'utf-8',
  bom: false,
  hash: 'h',
  lineStarts: lineStartsOf(text),
});
const read = (text: string) => readSettings(sourceOf(text));
const messages = (text: string) => read(text).problems.map(({ message }) => message);

const whole = `# our lamp
format: 1
title: Tide lamp   # working title
summary: A lamp that follows the tide
authors:
  - Ines Holm
licences: { hardware: CERN-OHL-P-2.0, code: MIT }
revision: 1.0
skills: [through-hole soldering, "wire, cut and stripped"]
cover: photos/lamp.jpg
roles:
  guide:
    - guide.md
  parts: guide.md#parts
accepted:
  - finding: value-differs:R1
    reason: both values work
    digests: [a1, b2]
dismissedRules: [spares]
my own key: stays
`;

describe('readSettings', () => {
  it('reads every setting, numbers as they are written', () => {
    const { settings, problems } = read(whole);
    expect(problems).toEqual([]);
    expect(settings).toMatchObject({
      format: 1,
      title: 'Tide lamp',
      summary: 'A lamp that follows the tide',
      authors: ['Ines Holm'],
      licences: { hardware: 'CERN-OHL-P-2.0', code: 'MIT', text: null },
      status: null,
      revision: '1.0',
      skills: ['through-hole soldering', 'wire, cut and stripped'],
      language: 'en',
      cover: 'photos/lamp.jpg',
      accepted: [{ finding: 'value-differs:R1', reason: 'both values work', digests: ['a1', 'b2'] }],
      dismissedRules: ['spares'],
    });
    expect(settings.roles).toEqual([
      { role: 'guide', places: ['guide.md'], why: 'named in twicebuilt.yaml' },
      { role: 'parts', places: ['guide.md#parts'], why: 'named in twicebuilt.yaml' },
    ]);
  });
  it('says where each key stands', () => {
    expect(read(whole).settings.places.title).toMatchObject({ line: 3, column: 1, quote: 'title' });
    expect(Object.keys(read(whole).settings.places)).not.toContain('my own key');
  });
  it('gives no settings and no problem for an empty file or one of comments', () => {
    expect(read('')).toEqual({ settings: noSettings, problems: [] });
    expect(read('# nothing yet\n')).toEqual({ settings: noSettings, problems: [] });
  });
  it('points out keys that are near a setting, and no others', () => {
    expect(messages('tilte: Lamp\n')).toEqual(["'tilte' is no setting; 'title' was probably meant."]);
    expect(messages('license: MIT\n')).toEqual(["'license' is no setting; 'licences' was probably meant."]);
    expect(messages('parts: parts.csv\n')[0]).toContain("expected under 'roles:'");
    expect(messages('colour: red\nweather: fine\nconstructor: x\ntoString: y\n')).toEqual([]);
  });
  it('reads a key however it is cased and spaced', () => {
    expect(read('Dismissed rules: [spares]\nAuthor: Ines\n').settings).toMatchObject({
      dismissedRules: ['spares'],
      authors: ['Ines'],
    });
  });
  it('says what was expected of a value of another form, and where it stands', () => {
    const { settings, problems } = read(
      'title: [a, b]\nauthors: {name: x}\nroles: guide.md\nformat: one\nsummary: fine\n',
    );
    expect(settings).toMatchObject({ title: null, authors: [], roles: [], format: 1, summary: 'fine' });
    expect(problems.map(({ place }) => place.kind === 'text' && place.quote)).toEqual([
      '[a, b]',
      '{name: x}',
      'guide.md',
      'one',
    ]);
    expect(problems[0]?.message).toBe("'title' was expected to be one line of words, but reads otherwise.");
  });
  it('refuses a role it does not know and a place outside the folder, and keeps the rest', () => {
    const { settings, problems } = read('roles:\n  recipe: a.md\n  guide: [../b.md, ./c.md, /etc/x, "C:\\\\d.md"]\n');
    expect(settings.roles).toEqual([{ role: 'guide', places: ['c.md'], why: 'named in twicebuilt.yaml' }]);
    expect(problems).toHaveLength(4);
  });
  it('warns about a format that is newer than it knows, and still reads', () => {
    const { settings, problems } = read('format: 2\ntitle: Lamp\n');
    expect(settings).toMatchObject({ format: 2, title: 'Lamp' });
    expect(problems[0]?.message).toContain('at most 1');
  });
  it('reads what it can of damaged YAML and says where it broke', () => {
    const { settings, problems } = read('title: Lamp\nsummary: a: b\n');
    expect(settings.title).toBe('Lamp');
    expect(problems[0]?.place).toMatchObject({ line: 2 });
  });
  it('reads lines that end in CR alone', () => {
    expect(read('format: 1\rtitle: Lamp\r').settings.title).toBe('Lamp');
  });
  it('never throws on damaged files, and every place lies in the text', () => {
    const cut = fc.nat(whole.length);
    const junk = fc.string({
      unit: fc.constantFrom(':', '-', ' ', '\n', '\r', '[', '{', '}', '&a', '*a', '"', '#', '|', '\t', 'x', '!!'),
      maxLength: 6,
    });
    fc.assert(
      fc.property(cut, cut, junk, (a, b, extra) => {
        const text = whole.slice(0, Math.min(a, b)) + extra + whole.slice(Math.max(a, b));
        for (const { place } of read(text).problems) {
          if (place.kind === 'text') expect(text.slice(...place.span)).toBe(place.quote);
        }
        readFrontMatter(sourceOf(`---\n${text}\n---\n`));
      }),
      { numRuns: 200, seed: 21 },
    );
  });
});

describe('readFrontMatter', () => {
  it('reads the settings that are stated and tells where the text goes on', () => {
    const text = '---\ntitle: Tide lamp\nlayout: page\n---\n\n# Tide lamp\n';
    const front = readFrontMatter(sourceOf(text, 'guide.md'));
    expect(front?.settings).toMatchObject({ title: 'Tide lamp' });
    expect(Object.keys(front?.settings ?? {})).toEqual(['title', 'places']);
    expect(front?.settings.places?.title).toMatchObject({ file: 'guide.md', line: 2, column: 1, quote: 'title' });
    expect(text.slice(front?.end)).toBe('\n# Tide lamp\n');
  });
  it('takes foreign keys and values of other forms without a word', () => {
    const front = readFrontMatter(sourceOf('---\ncover: {image: a.jpg}\ntags: [x]\nlicense: MIT\n---\nText'));
    expect(front?.problems).toEqual([]);
    expect(front?.settings.cover).toBeUndefined();
  });
  it('reports damage at the place in the whole file', () => {
    const front = readFrontMatter(sourceOf('---\r\ntitle: a: b\r\n---\r\nText'));
    expect(front?.problems[0]?.place).toMatchObject({ line: 2 });
  });
  it('takes a rule before prose for no front matter', () => {
    expect(readFrontMatter(sourceOf('# Lamp\n---\ntitle: x\n---\n'))).toBeNull();
    expect(readFrontMatter(sourceOf('---\nSome words here.\n---\n'))).toBeNull();
    expect(readFrontMatter(sourceOf('---\n\nFirst, take care: it is hot.\nThen: go on: fine.\n\n---\n'))).toBeNull();
    expect(readFrontMatter(sourceOf('---\ntitle: never closed\n'))).toBeNull();
  });
  it('gives nothing for an empty head', () => {
    expect(readFrontMatter(sourceOf('---\n---\nText'))).toEqual({ settings: {}, end: 8, problems: [] });
  });
});
