import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { SourceText } from '#core/sourceText.ts';
import { normalisedLabel } from '#formats/guide/linkDefinitions.ts';
import { slugOf } from '#notation/names.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { linkDefinitions } from '../linkDefinitions.ts';
import { everyInline, runsOf } from '../runningText.ts';
import { listed } from '../say.ts';

export const linkUndefined = defineCheck({
  id: 'link-undefined',
  title: 'Every label that a link or a footnote goes by is defined, and only once.',
  weight: 'slows',
  audience: 'builder',
  why: 'A link whose address was lost shows as brackets, and of two addresses only the first is ever used.',
  basis: 'CommonMark 0.31, 4.7: a reference needs a definition, and the first one of a label counts',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    yield* undefinedLabels(build);
    yield* definedTwice(build);
  },
  examples: {
    passes: [
      {
        title: 'defined before, after and in another case; footnotes; code and arrays',
        files: {
          'guide.md':
            '# Night light\n\n[sheet]: https://parts.example/sheet\n\nSee the [data sheet][Sheet], the [shop] and this[^1]. Call `a[i][j]`, or a[i][j].\n\n- [x] done\n- [ ] open\n\n```\n[text][label]\n```\n\n[shop]: https://parts.example/\n[^1]: A note.\n\n## Fit it\n\nSolder D1.\n',
        },
      },
      {
        title: 'a page that takes its addresses from another file, and a class of characters',
        files: {
          'guide.md':
            '# Night light\n\nSee the [data sheet][sheet]. The pattern [^a-z] matches a digit.\n\n{% include links.md %}\n\n## Fit it\n\nSolder D1.\n',
        },
      },
      {
        title: 'one address, defined twice',
        files: {
          'guide.md':
            '# Night light\n\nSee the [shop].\n\n[shop]: https://parts.example/\n\n## Fit it\n\nSolder.\n\n[Shop]: https://parts.example/\n',
        },
      },
    ],
    fails: [
      {
        title: 'a link and a footnote whose definitions were lost',
        files: {
          'guide.md':
            '# Night light\n\nSee the [data sheet][sheet].\n\n## Fit it\n\n1. Solder D1[^2].\n2. Read [the notes][].\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: '‘sheet’, ‘^2’ and ‘the notes’' }],
      },
      {
        title: 'two addresses of one label',
        files: {
          'guide.md':
            '# Night light\n\nBuy the lamp at the [shop].\n\n[shop]: https://parts.example/lamp\n\n## Fit it\n\nBuy the lid at the [shop].\n\n[shop]: https://parts.example/lid\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: '‘shop’' }],
      },
    ],
  },
});

/** References without a definition stay in the parsed text as they were written. */
const reference = /(?<![\p{L}\p{N}\]\\])\[([^[\]]*\p{L}[^[\]]*)\]\[([^[\]]{0,80})\]/gu;
const footnote = /(?<!\\)\[(\^\d{1,3})\](?![:(])/gu;

function* undefinedLabels(build: Build): Iterable<FindingDraft> {
  const found: { label: string; place: TextPlace }[] = [];
  for (const section of [...build.instructions.sections, ...build.beside]) {
    const source = build.texts.get(section.file);
    if (source !== undefined && takesFromElsewhere(source)) continue;
    for (const { nodes, place } of runsOf(section)) {
      for (const node of everyInline(nodes)) {
        if (node.kind !== 'text') continue;
        for (const match of [...node.value.matchAll(reference), ...node.value.matchAll(footnote)]) {
          const at = place.quote.indexOf(match[0]);
          const label = match[2] || match[1] || '';
          if (at >= 0) found.push({ label, place: placeInside(place, at, at + match[0].length) });
        }
      }
    }
  }
  if (found.length === 0) return;
  const labels = [...new Set(found.map(({ label }) => label))];
  yield {
    subjects: ['build:links'],
    mark: 'undefined',
    sides: found.slice(0, 5).map(({ place }) => place),
    message: `The text goes by ${listed(labels.map((label) => `‘${label}’`))}; nothing defines ${labels.length === 1 ? 'it' : 'them'}.`,
    consequence: 'A builder sees brackets where a link or a note should be.',
    remedy: 'Define each label, as ‘[label]: address’, or write the address into the link.',
  };
}

/** Site generators can add definitions from other files to a page. */
const takesFromElsewhere = rememberFor(({ text }: SourceText) =>
  /\{%-?\s*include|\{!|--8<--|\{\{[<%]?\s*(?:include|snippet)/i.test(text),
);

function* definedTwice(build: Build): Iterable<FindingDraft> {
  const byLabel = groupedBy(
    linkDefinitions(build).filter(({ label }) => !label.startsWith('^')),
    ({ place, label }) => `${place.file} ${normalisedLabel(label)}`,
  );
  for (const [first, ...others] of byLabel.values()) {
    const other = others.find(({ target }) => target !== first?.target);
    if (first === undefined || other === undefined) continue;
    yield {
      subjects: [`file:${first.place.file}`],
      mark: slugOf(first.label),
      sides: [other.place, first.place],
      message: `‘${first.label}’ is defined twice, as ${first.target} and as ${other.target}; the first counts.`,
      consequence: 'A builder who follows the link ends at the other address.',
      remedy: 'Give one of the two another label.',
    };
  }
}
