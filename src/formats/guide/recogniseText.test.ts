import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { recogniseText } from './recogniseText.ts';

function recognised(text: string, file = 'page.md') {
  const source: SourceText = { file, text, encoding: 'utf-8', bom: false, hash: '', lineStarts: lineStartsOf(text) };
  return recogniseText(source, () => null);
}

const guide =
  '# Lamp\n\n## Parts\n\n- ring\n- jack\n\n## Tools\n\n- iron\n- pliers\n\n## Solder the jack\n\n![jack](a.jpg)\n\nPush it in.\n\n## Close the lid\n\nPress the lid on.\n';

describe('recogniseText', () => {
  it('knows a guide by its steps, and says which sections list parts and tools', () => {
    expect(recognised(guide)).toMatchObject({
      kind: 'guide',
      sections: [
        { slug: 'parts', role: 'parts' },
        { slug: 'tools', role: 'tools' },
      ],
    });
  });

  it('scores a guide with facts above one without, and more steps above fewer', () => {
    const declared = recognised('## Solder the jack\n- Parts: J1\n\n## Close the lid\n- Parts: lid\n');
    expect(declared.kind).toBe('guide');
    expect(declared.score).toBeGreaterThan(recognised(guide).score);
    expect(recognised(`${guide}\n## Mount the foot\n\nPress it on.\n`).score).toBeGreaterThan(recognised(guide).score);
  });

  it('does not take a page of shop links for a guide or a parts list', () => {
    const page =
      '# Sourcing\n\n## Parts\n\n- [Ring](https://shop.example/1)\n- [Jack](https://shop.example/2)\n- [Lid](https://shop.example/3) (new)\n';
    expect(recognised(page)).toMatchObject({ kind: 'prose', sections: [] });
  });

  it('knows a log by its dated notes, even where they tell somebody to do something', () => {
    expect(
      recognised('# Log\n\n## 2026-05-01\n\nSolder the jack anew.\n\n## 2026-05-02\n\nCheck the fuse.\n').kind,
    ).toBe('log');
    expect(recognised('# Change of plan\n\nOn 2026-05-01 nothing happened.\n').kind).toBe('prose');
  });

  it('knows a list of parts or tools that is a page of its own', () => {
    expect(recognised('# Parts\n\n- 2 × ring\n- 1 × jack\n', 'parts.md').kind).toBe('parts');
    expect(recognised('# Tools\n\n- iron\n- pliers\n', 'tools.md').kind).toBe('tools');
  });

  it('knows a readme by its name, unless it is the guide', () => {
    expect(recognised('# Lamp\n\nA lamp.\n', 'README.md').kind).toBe('readme');
    expect(recognised(guide, 'README.md').kind).toBe('guide');
  });

  it('knows a licence text, and no text that merely names its licence', () => {
    expect(
      recognised('Licence\n\nSPDX-License-Identifier: CERN-OHL-P-2.0\n\nYou may use this.\n', 'LICENSE.txt').kind,
    ).toBe('licence');
    expect(recognised(`${guide}\n## Licence\n\nCC-BY-4.0\n`).kind).toBe('guide');
  });
});
