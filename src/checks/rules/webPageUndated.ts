import { defineCheck } from '../defineCheck.ts';
import { linksOf } from '../linksOf.ts';
import { listed, stepName } from '../say.ts';
import { sentencesOfSection } from '../stepSentences.ts';
import { proseWords } from '../writtenGuide.ts';

export const webPageUndated = defineCheck({
  id: 'web-page-undated',
  title: 'Where a step works with buttons of a page elsewhere, the guide says of which day or version it tells.',
  weight: 'tidy',
  audience: 'builder',
  words: 'English',
  why: 'A page has no version that a builder could install: its buttons move, and nobody can go back.',
  basis: 'common practice: software with its version, pages with the day on which they were seen',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    if (dated.test(proseWords(build))) return;
    const steps = build.instructions.sections.filter(({ role }) => role === 'step');
    const found = steps.flatMap((section) => {
      const isUsed = sentencesOfSection(section).some(({ text }) => opens.test(text));
      const isOperated = sentencesOfSection(section).some(({ text }) => operates.test(text));
      const link = linksOf(section).find(({ url }) => /^https?:/iu.test(url));
      return isUsed && isOperated && link !== undefined ? [{ section, place: link.place }] : [];
    });
    if (found.length === 0) return;
    const names = found.map(({ section }) => stepName(build, section.id));
    yield {
      subjects: ['build:pages'],
      sides: found.slice(0, 5).map(({ place }) => place),
      basis: 'read',
      message: `${listed(names)} ${names.length === 1 ? 'has' : 'have'} a builder operate a page elsewhere; the guide tells neither its version nor the day on which it looked like that.`,
      consequence: 'When the page has changed, a builder cannot tell whether they are lost or the page is another one.',
      remedy:
        'Add the version that the page shows, or ‘as of’ and the date; a copy of the page beside the guide is better still.',
    };
  },
  examples: {
    passes: [
      {
        title: 'a date, once',
        files: {
          'guide.md':
            '# Night light\n\nThe page looked like this in May 2026.\n\n## Set it up\n\nVisit [the page](https://lamp.example/setup) and press the Connect button.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
      {
        title: 'a page to read, and buttons of the lamp',
        files: {
          'guide.md':
            '# Night light\n\n## Set it up\n\nSee [the data sheet](https://lamp.example/sheet). Press the button of the lamp.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a page with a button',
        files: {
          'guide.md':
            '# Night light\n\n## Set it up\n\nVisit [the page](https://lamp.example/setup) and press the Connect button.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '‘Set it up’' }],
      },
      {
        title: 'a page with a menu',
        files: {
          'guide.md':
            '# Night light\n\n## Set it up\n\nOpen [the tool](https://lamp.example/tool). Choose “Load” from the menu.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'operate a page' }],
      },
    ],
  },
});

const opens = /\b(?:visit|open|go to|navigate to|browse to|head (?:over )?to|load)\b/iu;
const operates =
  /\b(?:hit|click|press|select|choose|tap|pick)\b[^.]*?(?:\b(?:button|menu|option|drop-?down|tab|icon|link)\b|[“"‘][^”"’]+[”"’])/iu;
const months = 'January|February|March|April|May|June|July|August|September|October|November|December';
const dated = new RegExp(
  `\\b(?:as of|version \\d|v\\d+\\.\\d)|\\b(?:${months}) (?:\\d{1,2}, )?20\\d\\d|\\b20\\d\\d-\\d\\d(?:-\\d\\d)?\\b`,
  'iu',
);
