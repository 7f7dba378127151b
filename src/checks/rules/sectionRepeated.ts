import type { Section } from '#core/step.ts';
import { slugOf, tokensOf } from '#notation/names.ts';
import { otherLanguage } from '#prose/language/languageOf.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { type SpokenSentence, sentencesIn } from '../sentencesIn.ts';

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
        const earlier = alike.slice(0, index);
        const before = earlier.find((other) => saysTheSame(other, section, readsWords));
        const partly = before ?? earlier.find((other) => sharedSentences(other, section).length >= fewestSentences);
        if (before === undefined && partly !== undefined) yield repeatedInPart(section, partly);
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
        title: 'pasted, and one copy grown since',
        files: {
          'guide.md':
            '# Pad\n\n## Before you start\n\n- Never pull the cable while the lamp is on.\n- Hold the socket when you plug the cable in.\n\n## Fit the lid\n\nPress it on.\n\n## Before you start\n\n- Read each step to its end first, since some of them cannot be undone.\n- Never pull the cable while the lamp is on.\n- Hold the socket when you plug the cable in.\n- Keep the small parts in a tray, away from the edge of the table.\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: '2 of its sentences are the same' }],
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

const fewestSentences = 2;

/** Sentences that stand in both, where they are at least half of what the shorter section says. */
function sharedSentences(a: Section, b: Section): SpokenSentence[] {
  const [of, other] = [longSentences(a), longSentences(b)];
  const said = new Set(of.map(wordsInOrder));
  const shared = other.filter((sentence) => said.has(wordsInOrder(sentence)));
  return shared.length * 2 >= Math.min(of.length, other.length) && factsOf(a) === factsOf(b) ? shared : [];
}

/** Sentences of few words, such as 'Solder it.', may well be said twice. */
function longSentences(section: Section): SpokenSentence[] {
  return sentencesIn(section).filter(({ text }) => tokensOf(text).length >= 6);
}

function wordsInOrder({ text }: SpokenSentence): string {
  return tokensOf(text).join(' ');
}

function repeatedInPart(section: Section, before: Section): FindingDraft {
  const shared = sharedSentences(before, section);
  return {
    subjects: [`file:${section.file}`],
    mark: section.id,
    sides: [section.place, before.place, ...shared.slice(0, 3).map(({ place }) => place)],
    message: `The section ‘${section.heading}’ stands here as well as on line ${before.place.line}; ${shared.length} of its sentences are the same, the others are not.`,
    consequence:
      'A reader looks for the difference, and one of the two goes on to tell what was corrected in the other.',
    remedy: 'Make one section of the two.',
  };
}

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
