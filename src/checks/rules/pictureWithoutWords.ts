import { defineCheck } from '../defineCheck.ts';
import { shownPictures } from '../pictureRefs.ts';
import { numbered } from '../say.ts';
import { saysNothing } from '../wordlessPicture.ts';

export const pictureWithoutWords = defineCheck({
  id: 'picture-without-words',
  title: 'Each picture has words that say what it shows.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'Who cannot see the picture, or whose page does not load it, learns nothing from ‘image’ or ‘IMG 1234’.',
  basis: 'WCAG 2.2, success criterion 1.1.1',
  needs: { subject: ['pictures'], witnesses: [] },
  *run({ build }) {
    const pictures = shownPictures(build).map(({ picture }) => picture);
    const described = new Set(build.choices.flatMap(({ path, alt }) => (alt === null ? [] : (path ?? []))));
    const silent = pictures.filter((picture) => saysNothing(picture) && !described.has(picture.path ?? ''));
    if (silent.length === 0) return;
    yield {
      subjects: ['build:pictures'],
      sides: silent.slice(0, 5).map(({ place }) => place),
      message: `${silent.length} of ${numbered(pictures.length, 'picture')} ${silent.length === 1 ? 'has' : 'have'} no words that say what can be seen.`,
      consequence: 'A builder who cannot see them, or whose page does not load them, gets nothing in their place.',
      remedy:
        'Write into the brackets of each picture what a builder should see in it; leave them empty only for decoration.',
    };
  },
  examples: {
    passes: [
      {
        title: 'words, short or long, and a caption in their place',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n![The flat side of D1 faces left](photos/IMG_1234.jpg)\n\n![Frog head](photos/head.jpg)\n\n![](photos/done.jpg "The lamp glows")\n',
        },
      },
      {
        title: 'an icon, a badge and a line without words are decoration',
        files: {
          'guide.md':
            '# Night light\n\n![](https://shields.example/badge.svg)\n\n## Fit the lamp\n\n![](icons/star.svg)\n\n![The lamp](a.jpg)\n',
        },
      },
    ],
    fails: [
      {
        title: 'words in shots.yaml for one of two pictures',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n![](photos/a.jpg)\n\n![](photos/b.jpg)\n',
          'shots.yaml': 'shots:\n  0123456789ab:\n    path: photos/a.jpg\n    alt: The lamp glows\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: '1 of 2' }],
      },
      {
        title: 'file names and stand-ins',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n![IMG_1234](photos/IMG_1234.jpg)\n\n![image](photos/a.jpg)\n\n![Step 3](photos/b.jpg)\n\n![The lamp glows](photos/c.jpg)\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '3 of 4' }],
      },
      {
        title: 'none at all',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n![](photos/a.jpg)\n\n![photo.jpg](photos/photo.jpg)\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '2 of 2' }],
      },
    ],
  },
});
