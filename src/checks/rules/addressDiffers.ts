import { normalisedLabel } from '#formats/guide/linkDefinitions.ts';
import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { linkDefinitions } from '../linkDefinitions.ts';
import { listed } from '../say.ts';

export const addressDiffers = defineCheck({
  id: 'address-differs',
  title: 'One name leads to one address on all pages.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'Of two addresses for the same thing one was corrected, and the other still leads to where it was.',
  basis: 'common practice of copy-editing: labels of links across the pages of a guide',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const all = linkDefinitions(build).filter(({ label, target }) => !label.startsWith('^') && isOnWeb(target));
    const apart = [...groupedBy(all, ({ label }) => normalisedLabel(label)).values()].filter(
      (same) => new Set(same.map(({ target }) => plainAddress(target))).size > 1,
    );
    if (apart.length === 0) return;
    yield {
      subjects: ['build:links'],
      mark: 'differ',
      sides: apart.flatMap((same) => same.map(({ place }) => place)).slice(0, 6),
      message: `${listed(apart.map(([first]) => `‘${first?.label}’`))} ${apart.length === 1 ? 'leads' : 'lead'} to other addresses on one page than on another.`,
      consequence: 'A reader of one page lands elsewhere than a reader of the other.',
      remedy: 'Find out which address holds, and write it on all pages.',
    };
  },
  examples: {
    passes: [
      {
        title: 'the same address in two spellings, and paths that depend on the page',
        files: {
          'guide.md':
            '# Lamp\n\nSee [the shop][shop], [the plan][plan] and [more](docs/more.md).\n\n## Fit it\n\nSolder D1.\n\n[shop]: https://parts.example/lamps/\n[plan]: docs/plan.svg\n',
          'docs/more.md':
            '# More\n\nSee [the shop][Shop] and [the plan][plan].\n\n[Shop]: <http://parts.example/lamps>\n[plan]: plan.svg\n',
        },
      },
      {
        title: 'notes of two pages with one number',
        files: {
          'guide.md': '# Lamp\n\nHot[^1]. See [more](more.md).\n\n## Fit it\n\nSolder D1.\n\n[^1]: https://a.example\n',
          'more.md': '# More\n\nCold[^1].\n\n[^1]: https://b.example\n',
        },
      },
    ],
    fails: [
      {
        title: 'two pages with two addresses',
        files: {
          'guide.md':
            '# Lamp\n\nSee [the start][start] and [more](more.md).\n\n## Fit it\n\nSolder D1.\n\n[start]: https://code.example/start\n',
          'more.md': '# More\n\nSee [the start][start].\n\n[start]: https://beta.code.example/begin\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: '‘start’' }],
      },
      {
        title: 'one page that defines it twice',
        files: {
          'guide.md':
            '# Lamp\n\nSee [the shop][shop].\n\n## Fit it\n\nSolder D1.\n\n[shop]: https://parts.example/one\n[shop]: https://parts.example/two\n',
        },
        expect: [{ file: 'guide.md', line: 10, words: '‘shop’' }],
      },
    ],
  },
});

function isOnWeb(target: string): boolean {
  return /^<?https?:\/\//iu.test(target);
}

function plainAddress(target: string): string {
  return target
    .replace(/^<|>$/gu, '')
    .replace(/^https?:\/\/(?:www\.)?/iu, '')
    .replace(/\/+$/u, '');
}
