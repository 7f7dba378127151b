import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { numbered } from '../say.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const adviceUntested = defineCheck({
  id: 'advice-untested',
  title: 'What the guide advises has been done.',
  weight: 'tidy',
  audience: 'builder',
  words: 'English',
  why: 'A guide is believed; advice that nobody has tried gets tried by somebody who cannot judge it.',
  basis: 'common practice: a guide tells what its maker did',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const found = everySection(build).flatMap((section) =>
      sentencesIn(section).flatMap((sentence) => {
        const words = untried.exec(sentence.text);
        return words === null || asks.test(sentence.text)
          ? []
          : [{ words: words[0], place: sentence.placeOf(words.index, words.index + words[0].length) }];
      }),
    );
    const [first] = found;
    if (first === undefined) return;
    yield {
      subjects: ['build:guide'],
      mark: 'untested',
      sides: found.slice(0, 5).map(({ place }) => place),
      basis: 'read',
      message: `By its own words the guide gives advice that nobody has tried: ‘${first.words}’${found.length > 1 ? ` and ${numbered(found.length - 1, 'more such place')}` : ''}.`,
      consequence: 'A builder who follows it may be the first to find that it does not work.',
      remedy: 'Try it and say what came of it, or leave it out.',
    };
  },
  examples: {
    passes: [
      {
        title: 'what was tried, and what a builder has not tested yet',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nAny cell of this size should work; I have tried two. If you have not tested the board yet, do it now. Do not close an untested lamp.\n',
        },
      },
      {
        title: 'theory as a subject',
        files: { 'guide.md': '# Lamp\n\nThe theory of it is short.\n\n## Fit it\n\nSolder D1.\n' },
      },
    ],
    fails: [
      {
        title: 'a board that was never tried',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nSolder D1.\n\n## Other boards\n\nThe larger board has the same pins. I haven’t tried it, but it should work.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'haven’t tried' }],
      },
      {
        title: 'in theory',
        files: { 'guide.md': '# Lamp\n\n## Fit it\n\nSolder D1. In theory the red lamp can go here too.\n' },
        expect: [{ file: 'guide.md', line: 5, words: 'In theory' }],
      },
    ],
  },
});

const untried =
  /\b(?:(?:is|are|was|remains?) (?:still |as yet |so far |completely )?untested|(?:I|we) (?:have not|haven['’]t|had not|hadn['’]t|did not|didn['’]t|have never|never) (?:yet |actually |really |been able to )?(?:tr(?:y|ied)|test(?:ed)?)|(?:has|have) (?:not|never) (?:yet )?been (?:tried|tested)|not (?:yet )?(?:been )?tested by (?:me|us)|in theory|theoretically)\b/iu;
const asks = /\b(?:do not|don['’]t|never) \p{L}+ (?:an? )?untested\b|\bif\b[^,]*\btest/iu;
