import type { Build } from '#core/build.ts';
import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { sentencesIn } from '../sentencesIn.ts';
import { proseWords } from '../writtenGuide.ts';

export const pictureOfOtherVersion = defineCheck({
  id: 'picture-of-other-version',
  title: 'The pictures show the version that the guide is about.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'What differs from the picture looks like a mistake of the builder’s own.',
  basis: 'common practice: a picture that does not fit is worse than none',
  needs: { subject: ['steps', 'pictures'], witnesses: [] },
  *run({ build }) {
    const found = everySection(build).flatMap((section) =>
      sentencesIn(section).filter(({ text }) => ownsUp(text, build)),
    );
    const [first] = found;
    if (first === undefined) return;
    yield {
      subjects: ['build:pictures'],
      sides: found.slice(0, 5).map(({ place }) => place),
      basis: 'read',
      message: `The guide says of its pictures that they show something else: ‘${first.text.trim()}’`,
      consequence: 'A builder compares with a picture of another thing, and cannot tell a mistake from a difference.',
      remedy: 'Take the pictures anew, or say beside each one that differs what looks otherwise now.',
    };
  },
  examples: {
    passes: [
      {
        title: 'pictures of the one version that there is, and of both side by side',
        files: {
          'guide.md':
            '# Lamp\n\nThe pictures show version 2. The photos were taken from the left.\n\n## Fit it\n\nSolder D1.\n\n![D1 on the board](a.jpg)\n',
        },
      },
      {
        title: 'two versions, each with its pictures; an old board that is spoken of otherwise',
        files: {
          'guide.md':
            '# Lamp\n\nThe left picture shows version 1, the right picture version 2. The old version had no switch.\n\n## Fit it\n\nSolder D1.\n\n![D1 on the board](a.jpg)\n',
        },
      },
    ],
    fails: [
      {
        title: 'pictures of a prototype',
        files: {
          'guide.md':
            '# Lamp\n\nMind that some of the photos still show an earlier prototype.\n\n## Fit it\n\nSolder D1.\n\n![D1 on the board](a.jpg)\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'prototype' }],
      },
      {
        title: 'pictures of one of two versions',
        files: {
          'guide.md':
            '# Lamp\n\nThis is for boards v1 and v2. All pictures are of v1.\n\n## Fit it\n\nSolder D1.\n\n![D1 on the board](a.jpg)\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'v1' }],
      },
    ],
  },
});

const pictures =
  /\b(?:photos?|photographs?|pictures?|images?|screenshots?|renders?)\b(?:(?! which| that)[^.,;:]){0,40}?\b(?:are|is|were|was|shows?|taken)\b([^.;:]{0,60})/iu;
const older =
  /\b(?:older|old|earlier|previous|former|first|prior|another|a different|the other)\s(?:\p{L}+\s)?(?:versions?|revisions?|prototypes?|builds?|models?|designs?|iterations?|boards?)\b|\bprototypes?\b/iu;
const numbered = /\b(?:v|ver\.? ?|version |rev\.? ?|revision )(\d+(?:\.\d+)?)\b/giu;

/** Whether a sentence says that pictures show an older version, or one of several. */
function ownsUp(text: string, build: Build): boolean {
  const shows = pictures.exec(text)?.[1] ?? '';
  if (older.test(shows)) return true;
  const own = versionsIn(shows);
  const beside = versionsIn(text).filter((version) => !own.includes(version));
  if (own.length !== 1 || beside.length > 0 || /\b(?:left|right|above|below|both)\b/iu.test(text)) return false;
  return versionsIn(proseWords(build)).some((version) => !own.includes(version));
}

function versionsIn(text: string): string[] {
  return [...new Set([...text.matchAll(numbered)].map((match) => match[1] ?? ''))];
}
