import { placeOf } from '#core/sourceText.ts';
import { defineCheck } from '../defineCheck.ts';
import { filesPlaying } from '../filesPlaying.ts';
import { maskUnread } from '../maskUnread.ts';

export const earlierWorkNotLinked = defineCheck({
  id: 'earlier-work-not-linked',
  title: 'Work that the build goes back to is named with a link.',
  weight: 'tidy',
  audience: 'publisher',
  words: 'English',
  why: 'Most licences ask for it, and a builder finds there what is not repeated here.',
  basis: 'licences that ask for attribution; Open Know-How manifest 1.0, field derivative-of',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    for (const file of filesPlaying(build, 'guide')) {
      const source = build.texts.get(file);
      if (source === undefined) continue;
      for (const match of maskUnread(source).matchAll(derived)) {
        const from = source.text.lastIndexOf('\n\n', match.index) + 1;
        const end = source.text.indexOf('\n\n', match.index);
        const block = source.text.slice(from, end < 0 ? source.text.length : end);
        if (/https?:\/\/|\]\(|\]\[|\]:|www\./i.test(block) || /href=/i.test(block)) continue;
        yield {
          subjects: [`file:${file}`],
          mark: `line-${match.index}`,
          sides: [placeOf(source, [match.index, match.index + match[0].length])],
          basis: 'read',
          message: `The text says ‘${match[0].replace(/\s+/g, ' ')}’, and gives no link to it.`,
          consequence: 'Who made the earlier work is not credited, and a builder cannot look there.',
          remedy: 'Name the work and its maker, with a link and its licence.',
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'with a link; and words that speak of chips and of parts',
        files: {
          'guide.md':
            '# Night light\n\nThis lamp is based on [the hall lamp](https://lamps.example/hall).\n\nThe board is based on the ESP32. The value is derived from R1.\n\n## Fit the lamp\n\nSolder D1.\n',
        },
      },
      { title: 'no earlier work', files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' } },
    ],
    fails: [
      {
        title: 'a remix of something',
        files: {
          'guide.md':
            '# Night light\n\nThis is a remix of the hall lamp by another club.\n\n## Fit the lamp\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'a remix of' }],
      },
      {
        title: 'based on a design, forked from code',
        files: {
          'guide.md':
            '# Night light\n\nThis design is based on an older design of a neighbour.\n\nThe firmware was forked from hall-lamp.\n\n## Fit the lamp\n\nSolder D1.\n',
        },
        expect: [
          { file: 'guide.md', line: 3, words: 'based on' },
          { file: 'guide.md', line: 5, words: 'forked from' },
        ],
      },
    ],
  },
});

/** Only words of descent: 'based on the ESP32' tells of a chip. */
const derived =
  /\b(?:forked from|an? (?:remix|fork|clone|derivative|copy) of|(?:inspired by|based on|adapted from|derived from) (?:the |an? )?(?:\p{L}+ ){0,3}?(?:design|project|guide|tutorial|article|build|work|instructions?|idea|post|video|schematics?|article) (?:of|by|from|on|in)\b)/giu;
