import type { Build } from '#core/build.ts';
import type { Edit } from '#core/edit.ts';
import { normalisedLabel } from '#formats/guide/linkDefinitions.ts';
import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { type LinkDefinition, linkDefinitions } from '../linkDefinitions.ts';
import { listed } from '../say.ts';

export const definitionUnused = defineCheck({
  id: 'definition-unused',
  title: 'Every address and footnote that the guide defines is used.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A footnote that nothing calls is never read, and its text was meant for somebody.',
  basis: 'common practice: definitions of a page, less the labels that its text goes by',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const unused = linkDefinitions(build).filter((one) => !isUsed(one, build));
    for (const [file, open] of groupedBy(unused, ({ place }) => place.file)) {
      yield {
        subjects: [`file:${file}`],
        mark: 'links',
        sides: open.slice(0, 5).map(({ place }) => place),
        message: `Nothing in the text goes by ${listed(open.map(({ label }) => `‘${label}’`))}, which ${file} defines.`,
        consequence: 'What it was to lead to, or to add, is missing from the page.',
        remedy: 'Use it where it belongs, or take the line out.',
        mend: withoutLines(open, build),
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'used in whatever form, and comments in the form of a definition',
        files: {
          'guide.md':
            '# Night light\n\n[//]: # (Keep this short)\n[comment]: <> (and plain)\n\nSee the [data sheet][Sheet], the [shop], ![the lamp][picture] and this[^1].\n\n[sheet]: https://parts.example/sheet\n[shop]: https://parts.example/\n[picture]: lamp.png\n[^1]: A note.\n\n## Fit it\n\nSolder D1.\n',
        },
      },
      {
        title: 'in code and in the middle of a paragraph it defines nothing',
        files: {
          'guide.md':
            '# Night light\n\n```\n[a]: 1\n```\n\nThe line\n[b]: 2\ngoes on.\n\n- code in a list:\n\n  ```\n  [c]: 3\n  ```\n\n## Fit it\n\nSolder D1.\n',
        },
      },
    ],
    fails: [
      {
        title: 'an address and a footnote',
        files: {
          'guide.md':
            '# Night light\n\nSee the [shop].\n\n[shop]: https://parts.example/\n[sheet]: https://parts.example/sheet\n\n[^1]: Mind the heat.\n\n## Fit it\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: '‘sheet’ and ‘^1’' }],
      },
      {
        title: 'of a label that is only spoken of without brackets',
        files: {
          'guide.md':
            '# Night light\n\nBuy it in the shop.\n\n## Fit it\n\nSolder.\n\n[shop]: https://parts.example/\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: '‘shop’' }],
      },
    ],
  },
});

function isUsed({ label, place }: LinkDefinition, build: Build): boolean {
  const text = build.texts.get(place.file)?.text ?? '';
  const wanted = normalisedLabel(label);
  return [...text.matchAll(/\[((?:[^[\]\\]|\\.)+)\](:?)/g)].some(
    (match) =>
      normalisedLabel(match[1] ?? '') === wanted &&
      (match[2] === '' || !/(?:^|[\r\n])[ \t>]*$/.test(text.slice(0, match.index))),
  );
}

/** Takes the lines of addresses out; a footnote's words are the maker's to move. */
function withoutLines(open: readonly LinkDefinition[], build: Build): Edit | null {
  const file = open[0]?.place.file ?? '';
  const source = build.texts.get(file);
  const isPlain = open.every(({ label, isOneLine }) => isOneLine && !label.startsWith('^'));
  if (source === undefined || !isPlain) return null;
  return {
    file,
    base: source.hash,
    changes: open.map(({ place }) => {
      const start = source.lineStarts[place.line - 1] ?? place.span[0];
      return { span: [start, source.lineStarts[place.line] ?? source.text.length], text: '' };
    }),
    why: 'Takes out addresses that nothing uses',
  };
}
