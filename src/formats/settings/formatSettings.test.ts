import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { roleNames } from '#core/settings.ts';
import { lineStartsOf } from '#core/sourceText.ts';
import { formatSettings, readSettings } from './readSettings.ts';

const read = (text: string) =>
  readSettings({
    file: 'twicebuilt.yaml',
    text,
    encoding: 'utf-8',
    bom: false,
    hash: 'h',
    lineStarts: lineStartsOf(text),
  });

describe('formatSettings', () => {
  it('writes the title, each role with its reason, and hints for what is not said', () => {
    const text = formatSettings({
      title: 'Tide lamp',
      roles: [
        { role: 'guide', places: ['guide.md'], why: '14 headings that read like steps' },
        { role: 'parts', places: ['parts.csv', 'guide.md#parts'], why: '' },
      ],
    });
    expect(text).toContain('\nformat: 1\n\ntitle: Tide lamp\n');
    expect(text).toContain(
      'roles:\n  # 14 headings that read like steps\n  guide:\n    - guide.md\n  parts:\n    - parts.csv\n',
    );
    expect(text).toContain('# authors: [Your name]');
    expect(parse(text)).toEqual({
      format: 1,
      title: 'Tide lamp',
      roles: { guide: ['guide.md'], parts: ['parts.csv', 'guide.md#parts'] },
    });
  });
  it('replaces the comment above a setting', () => {
    const text = formatSettings({ title: 'Lamp', roles: [] }, { title: 'taken from the\nfirst heading' });
    expect(text).toContain('# taken from the\n# first heading\ntitle: Lamp\n');
  });
  it('reads back as what was written, whatever the words', () => {
    const words = fc
      .string({ minLength: 1, maxLength: 30 })
      .map((text) => text.trim())
      .filter((text) => text !== '');
    const path = fc
      .string({ unit: fc.constantFrom('a', 'ö', ' ', '#', '-', '.md', "'", ':', '['), minLength: 1, maxLength: 8 })
      .map((text) => `fa${text}g`);
    const settings = fc.record({
      title: words,
      summary: fc.option(words),
      authors: fc.array(words, { maxLength: 3 }),
      licences: fc.record({ hardware: fc.option(words), code: fc.option(words), text: fc.option(words) }),
      status: fc.constant(null),
      revision: fc.option(words),
      skills: fc.array(words, { maxLength: 3 }),
      supply: fc.option(words),
      language: words,
      cover: fc.constant(null),
      reports: fc.constant(null),
      site: fc.constant(null),
      roles: fc.uniqueArray(
        fc.record({
          role: fc.constantFrom(...roleNames),
          places: fc.array(path, { minLength: 1, maxLength: 3 }),
          why: words,
        }),
        { selector: ({ role }) => role },
      ),
      accepted: fc.array(fc.record({ finding: words, reason: words, digests: fc.array(words, { maxLength: 2 }) }), {
        maxLength: 2,
      }),
      dismissedRules: fc.array(words, { maxLength: 2 }),
      impactDone: fc.array(words, { maxLength: 2 }),
      declined: fc.array(words, { maxLength: 2 }),
    });
    fc.assert(
      fc.property(settings, (given) => {
        const { settings: again, problems } = read(formatSettings(given));
        expect(problems).toEqual([]);
        const { places: _, format: __, ...rest } = again;
        expect(rest).toEqual({
          ...given,
          roles: given.roles.map((role) => ({ ...role, why: 'named in twicebuilt.yaml' })),
        });
      }),
      { numRuns: 100, seed: 9 },
    );
  });
});
