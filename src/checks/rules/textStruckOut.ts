import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { plainText } from '#core/text.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck } from '../defineCheck.ts';
import { everyInline, runsOf } from '../runningText.ts';
import { numbered } from '../say.ts';

export const textStruckOut = defineCheck({
  id: 'text-struck-out',
  title: 'No sentence of the guide is left struck out.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A struck sentence is a draft: a reader cannot tell whether the rest of the page was gone over as well.',
  basis: 'common practice of copy-editing',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const struck = [...build.instructions.sections, ...build.beside]
      .filter((section) => !tellsOfChanges(section))
      .flatMap(struckIn);
    const [first] = struck;
    if (first === undefined) return;
    yield {
      subjects: ['build:guide'],
      sides: struck.slice(0, 5).map(({ place }) => place),
      message: `${numbered(struck.length, 'passage')} of the guide ${struck.length === 1 ? 'is' : 'are'} struck out, such as ‘${first.words}’.`,
      consequence: 'A reader reads it all the same, and wonders whether it holds.',
      remedy: 'Delete it; what was changed and why belongs to the log or a list of changes.',
    };
  },
  examples: {
    passes: [
      {
        title: 'lengths with a tilde, code, and a word or a value replaced in view',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\nCut ~30 cm to ~50 cm of wire; 5~10 and 20~30 will do. Type `~~a b c d~~`. Use ~~10 kΩ~~ 4.7 kΩ.\n',
        },
      },
      {
        title: 'a list of changes',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\nSolder D1.\n\n## Changes\n\n- ~~Solder the lamp to the other side~~ Turn it round.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a sentence on a page that the guide links to',
        files: {
          'guide.md': '# Night light\n\nRead [where to buy](buying.md) first.\n\n## Fit it\n\nSolder D1.\n',
          'buying.md': '# Where to buy\n\n~~Ask at the corner shop for the lamp.~~ Any lamp will do.\n',
        },
        expect: [{ file: 'buying.md', line: 3, words: 'corner shop' }],
      },
      {
        title: 'a sentence in a step',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\nSolder D1. ~~Glue the lid on with the hot glue.~~ Screw the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, column: 12, words: 'Glue the lid' }],
      },
      {
        title: 'a point of a list, by a tag',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\n- Solder D1.\n- <del>Solder the battery holder to the board</del>\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: '1 passage' }],
      },
    ],
  },
});

interface Struck {
  readonly words: string;
  readonly place: TextPlace;
}

function struckIn(section: Section): Struck[] {
  return runsOf(section).flatMap(({ nodes, place }) =>
    everyInline(nodes).flatMap((node): Struck[] => {
      const words = node.kind === 'deleted' ? plainText(node.children).trim() : '';
      if ((words.match(/\p{L}{2,}/gu) ?? []).length < 4) return [];
      // One tilde on each side is more often 'about' than a line through the words.
      const at = [...place.quote.matchAll(/~~|<(?:del|s|strike)\b/gi)].find(({ index }) =>
        place.quote.slice(index, index + 40).includes(words.split(/\s/)[0] ?? words),
      );
      return at === undefined ? [] : [{ words, place: placeInside(place, at.index, place.quote.length) }];
    }),
  );
}

function tellsOfChanges({ heading, parents }: Section): boolean {
  return [heading, ...parents].some((words) => /\b(?:chang|histor|errat|revision|release|to-?do|roadmap)/i.test(words));
}
