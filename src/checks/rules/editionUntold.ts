import { defineCheck } from '../defineCheck.ts';
import { frontOf, isWrittenOut, proseWords } from '../writtenGuide.ts';

export const editionUntold = defineCheck({
  id: 'edition-untold',
  title: 'The guide says of when or of which revision it is.',
  weight: 'tidy',
  audience: 'publisher',
  words: 'English',
  why: 'Shops, programs and boards change; a reader has to know how old the words are.',
  basis: 'IEC/IEEE 82079-1, in substance: information carries its date or version',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    if (!isWrittenOut(build) || build.log.some(({ at }) => at !== null)) return;
    if (build.files.some(({ path }) => kept.test(path))) return;
    const settings = build.texts.get('twicebuilt.yaml')?.text ?? '';
    if (dated.test(`${proseWords(build)}\n${settings}`)) return;
    yield {
      subjects: ['build:edition'],
      sides: [frontOf(build)],
      basis: 'read',
      message:
        'Nothing in the guide says of when it is or which revision of it this is, and no log or history is dated.',
      consequence: 'A reader cannot tell whether the parts, addresses and programs are of this year.',
      remedy: 'Write the date of the last change under the title, or keep a dated log.',
    };
  },
  examples: {
    passes: [
      {
        title: 'a date in the text',
        files: {
          'guide.md':
            '# Lamp\n\nLast changed in March 2031.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder D2.\n\n## Fit the lens\n\nSolder D3.\n',
        },
      },
      {
        title: 'a revision of the guide',
        files: {
          'guide.md':
            '# Lamp\n\nGuide version 1.2.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder D2.\n\n## Fit the lens\n\nSolder D3.\n',
        },
      },
    ],
    fails: [
      {
        title: 'neither',
        files: {
          'guide.md':
            '# Lamp\n\nA lamp for the hall.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder D2.\n\n## Fit the lens\n\nSolder D3.\n',
        },
        expect: [{ file: 'guide.md', line: 1, words: 'of when it is' }],
      },
      {
        title: 'a version of the board is none of the guide, nor a year in an address',
        files: {
          'guide.md':
            '# Lamp\n\nFor version 2 of the board. See https://lamps.example/2031/03.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder D2.\n\n## Fit the lens\n\nSolder D3.\n',
        },
        expect: [{ file: 'guide.md', line: 1, words: 'of when it is' }],
      },
    ],
  },
});

/** Files in which changes are kept with their dates. */
const kept = /(?:^|\/)(?:history\.jsonl|change-?log[^/]*|changes\.(?:md|txt)|release-?notes[^/]*|news\.md)$/iu;
const months =
  '(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sep(?:t(?:ember)?)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)';
const dated = new RegExp(
  [
    '\\b(?:19|20)\\d{2}[-./](?:0?[1-9]|1[0-2])(?:[-./](?:0?[1-9]|[12]\\d|3[01]))?\\b',
    '\\b(?:0?[1-9]|[12]\\d|3[01])[./](?:0?[1-9]|1[0-2])[./](?:20)?\\d{2}\\b',
    `\\b${months}\\.? (?:\\d{1,2}(?:st|nd|rd|th)?,? )?(?:19|20)\\d{2}\\b`,
    `\\b${months}\\.?,? '?\\d{2}\\b(?=\\)|\\.|,)`,
    '\\b(?:in|since|from|of|©|updated|copyright) (?:\\p{L}+ )?(?:19|20)\\d{2}\\b',
    '\\b(?:guide|document|instructions?|manual|page|text)(?: is)?,? (?:version|revision|edition|rev\\.?|v)\\.? ?\\d',
    '\\b(?:version|revision|edition|rev\\.?) \\d[\\d.]* of (?:this|the) (?:guide|document|manual|instructions)',
    '\\b(?:date|edition)\\s*[:=]',
  ].join('|'),
  'iu',
);
