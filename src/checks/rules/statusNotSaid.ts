import { defineCheck } from '../defineCheck.ts';
import { frontOf, isWrittenOut, proseWords } from '../writtenGuide.ts';

export const statusNotSaid = defineCheck({
  id: 'status-not-said',
  title: 'It is said whether the thing has been built as published, and how often.',
  weight: 'slows',
  audience: 'publisher',
  words: 'English',
  why: 'Some published designs were never built in the form in which they are published.',
  basis: 'common practice; DIN SPEC 3105-1 and Open Know-How ask for the stage of development',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    if (build.settings.status !== null || !isWrittenOut(build) || statusWords.test(proseWords(build))) return;
    yield {
      subjects: ['build:status'],
      sides: [frontOf(build)],
      message: 'Nothing says whether this has been built as described here, how often and by whom.',
      consequence: 'A builder cannot tell a plan from a thing that works.',
      remedy: 'Write ‘status: built ×1’ (or idea, or prototype) into twicebuilt.yaml.',
    };
  },
  examples: {
    passes: [
      {
        title: 'in the settings',
        files: {
          'twicebuilt.yaml': 'format: 1\nstatus: built ×2\n',
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
      {
        title: 'in a sentence',
        files: {
          'guide.md':
            '# Night light\n\nI have built three of them.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
      {
        title: 'a page that has only begun',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' },
      },
    ],
    fails: [
      {
        title: 'no word',
        files: {
          'guide.md':
            '# Night light\n\nA lamp for the hall.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 1, words: 'whether this has been built' }],
      },
      {
        title: 'settings that leave it out',
        files: {
          'twicebuilt.yaml': 'format: 1\ntitle: Night light\n',
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 1, words: 'how often' }],
      },
    ],
  },
});

/** Sentences that tell of things that were built, or of their stage. */
const statusWords =
  /\b(?:prototypes?|proof of concept|work in progress|untested|(?:has|have|was|were|I|we)(?:['’]ve| have)? (?:been )?(?:\p{L}+ )?(?:built|made|assembled|tested)|built (?:by|and tested|twice|once|it|one|two|three|several)|replicat\w+|(?:first|second|third|my|our) (?:build|lamp|unit|version)|in (?:daily )?use (?:since|for)|status|released?|stable|beta)\b/iu;
