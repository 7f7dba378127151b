import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { shownPictures } from '../pictureRefs.ts';
import { saysNothing } from '../wordlessPicture.ts';

export const pictureWordsRepeated = defineCheck({
  id: 'picture-words-repeated',
  title: 'Two pictures of a page have two sets of words.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'Words that were copied along with the line fit one of the pictures, and mislead whoever hears them for the other.',
  basis: 'WCAG 2.2, success criterion 1.1.1: the words serve the purpose of their own picture',
  needs: { subject: ['pictures'], witnesses: [] },
  *run({ build }) {
    const speaking = shownPictures(build).filter(({ picture }) => picture.alt.trim() !== '' && !saysNothing(picture));
    const alike = [...groupedBy(speaking, ({ picture, from }) => `${from}\n${wordsOf(picture)}`).values()].filter(
      (group) => new Set(group.map(({ picture }) => picture.path ?? picture.url)).size > 1,
    );
    const [first] = alike;
    if (first === undefined) return;
    const words = first[0]?.picture.alt.trim() ?? '';
    yield {
      subjects: ['build:pictures'],
      sides: alike
        .flat()
        .slice(0, 5)
        .map(({ picture }) => picture.place),
      message: `${alike.flat().length} pictures share their words with another picture of the page: ${first.length} say ‘${words}’${alike.length > 1 ? ', and so on' : ''}.`,
      consequence: 'A builder who cannot see them does not learn in what they differ.',
      remedy: 'Say of each picture what can be seen in that one.',
    };
  },
  examples: {
    passes: [
      {
        title: 'one picture shown twice, an icon, words on two pages, captions that differ',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\n![The lamp glows](a.jpg)\n\n![](icons/a.svg) ![](icons/b.svg)\n\n## Test it\n\n![The lamp glows](a.jpg)\n\n![The board](b.jpg "From above")\n\n![The board](c.jpg "From below")\n',
        },
      },
      {
        title: 'stand-ins are another matter',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\n![image](a.jpg)\n\n![image](b.jpg)\n',
        },
      },
    ],
    fails: [
      {
        title: 'copied along',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\n![The lamp from above](a.jpg)\n\n![The lamp from below](b.jpg)\n\n![The lamp from above](c.jpg)\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: '2 say ‘The lamp from above’' }],
      },
      {
        title: 'in another case, and several of them',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\n![Lid](a.jpg)\n\n![lid](b.jpg)\n\n![Base](c.jpg)\n\n![Base](d.jpg)\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '4 pictures' }],
      },
    ],
  },
});

function wordsOf({ alt, title }: { readonly alt: string; readonly title: string | null }): string {
  return `${alt} ${title ?? ''}`.replace(/\s+/g, ' ').trim().toLowerCase();
}
