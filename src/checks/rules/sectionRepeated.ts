import type { Section } from '#core/step.ts';
import { slugOf, tokensOf } from '#notation/names.ts';
import { otherLanguage } from '#prose/language/languageOf.ts';
import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';

export const sectionRepeated = defineCheck({
  id: 'section-repeated',
  title: 'No section of the guide stands on a page twice.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'Of a section that was pasted twice one copy gets corrected, and the other goes on to tell what was wrong.',
  basis: 'common practice of copy-editing',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build, facts }) {
    const readsWords = otherLanguage(facts.language) === null;
    const sections = [...build.instructions.sections, ...build.beside].filter(({ depth }) => depth > 0);
    for (const alike of groupedBy(sections, ({ file, heading }) => `${file} ${slugOf(heading)}`).values()) {
      for (const [index, section] of alike.entries()) {
        const before = alike.slice(0, index).find((other) => saysTheSame(other, section, readsWords));
        if (before === undefined) continue;
        yield {
          subjects: [`file:${section.file}`],
          mark: section.id,
          sides: [section.place, before.place],
          message: `The section ‘${section.heading}’ stands here as well as on line ${before.place.line}, in ${before.signature === section.signature ? 'the same' : 'nearly the same'} words.`,
          consequence: 'A reader looks for the difference, or does the work twice.',
          remedy: 'Keep one of the two; where the work is to be done again, say so and link to it.',
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'one heading over different work, and short sections',
        files: {
          'guide.md':
            '# Pad\n\n## Left half\n\n### Solder the switches\n\nSolder all switches of the left half to the left board, from the row at the top to the row at the bottom.\n\n### Test\n\nPress it.\n\n## Right half\n\n### Solder the switches\n\nSolder all switches of the right half to the right board, from the row at the top to the row at the bottom.\n\n### Test\n\nPress it.\n',
        },
      },
      {
        title: 'the same sentences with other parts, or another picture',
        files: {
          'guide.md':
            '# Pad\n\n## Fit it\n\n- Parts: R1\n\nBend the leads, push them through, turn the board over, solder both and cut them short.\n\n## Fit it\n\n- Parts: R2\n\nBend the leads, push them through, turn the board over, solder both and cut them short.\n\n## See it\n\nHold the lamp so that the flat side faces the mark, then look at the picture below.\n\n![A](a.jpg)\n\n## See it\n\nHold the lamp so that the flat side faces the mark, then look at the picture below.\n\n![B](b.jpg)\n',
          'parts.csv': 'Reference,Quantity,Value,Description\nR1,1,10k,Resistor\nR2,1,1k,Resistor\n',
        },
      },
    ],
    fails: [
      {
        title: 'pasted twice',
        files: {
          'guide.md':
            '# Pad\n\n## Fit it\n\nBend the leads, push them through, turn the board over, solder both and cut them short.\n\n## Close it\n\nPress the lid on.\n\n## Fit it\n\nBend the leads, push them through, turn the board over, solder both and cut them short.\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'line 3, in the same words' }],
      },
      {
        title: 'pasted, and one copy mended',
        files: {
          'guide.md':
            '# Pad\n\n## Fit the lid\n\nLay the lid on the base so that all four holes meet, push the four screws through, and tighten them by hand until the gap is closed all the way round.\n\n## Fit the lid\n\nLay the lid on the base so that all four holes meet, push the four screws through, and tighten them gently by hand until the gap is closed all the way round.\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'nearly the same words' }],
      },
    ],
  },
});

/** Fewer words may well be said twice. */
const fewest = 12;
const tellApart =
  /^(?:left|right|top|bottom|upper|lower|first|second|third|fourth|last|other|front|back|inner|outer|red|black|blue|green|white|yellow|new|old|without|not)$/;

/** The same words, facts and pictures; or nearly the same English words, where what differs tells nothing apart. */
function saysTheSame(a: Section, b: Section, readsWords: boolean): boolean {
  const [of, other] = [wordsOf(a), wordsOf(b)];
  if (of.length < fewest || other.length < fewest || factsOf(a) !== factsOf(b)) return false;
  if (!readsWords) return a.signature === b.signature;
  const [set, otherSet] = [new Set(of), new Set(other)];
  const apart = [...set].filter((word) => !otherSet.has(word)).concat([...otherSet].filter((word) => !set.has(word)));
  const all = new Set([...of, ...other]).size;
  return apart.length <= all * 0.1 && apart.every((word) => !tellApart.test(word) && !/\d/.test(word));
}

function wordsOf({ blocks }: Section): readonly string[] {
  return tokensOf(blocks.map(({ place }) => place.quote).join('\n'));
}

function factsOf({ facts, pictures }: Section): string {
  return [...facts.map(({ label, value }) => `${label} ${value}`), ...pictures.map(({ url }) => url)].join('\n');
}
