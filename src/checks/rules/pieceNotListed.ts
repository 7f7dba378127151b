import type { Judged } from '#core/assembled.ts';
import type { Place, Span } from '#core/place.ts';
import { remember } from '#core/remember.ts';
import { slugOf, tokensOf } from '#notation/names.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { type SpokenText, spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck } from '../defineCheck.ts';
import table from '../knowledge/bitsAndPieces.json';
import { rowWords } from '../partWords.ts';
import { listed, partsFileName, partsFiles, stepName } from '../say.ts';

export const pieceNotListed = defineCheck({
  id: 'piece-not-listed',
  title: 'Screws, glue, tape and wire that steps speak of stand in a list.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Fasteners and things that are used up are what parts lists forget most often.',
  basis: 'common practice: nouns of the steps, less those of the lists of parts and tools',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run(judged) {
    const { build } = judged;
    const covered = wordsOfLists(judged);
    const texts = spokenTexts(build).filter(
      ({ step, words }) => step !== null && sentencesOf(words).some(({ text }) => anyThing(text)),
    );
    for (const thing of things) {
      const { name, covers } = thing;
      if (covers.some((words) => covered.includes(` ${words} `))) continue;
      const places = texts.flatMap((text) => mentions(text, thing));
      if (places.length === 0) continue;
      const steps = [...new Set(places.map(({ step }) => step))];
      yield {
        subjects: [`part:${slugOf(name)}`],
        sides: [...places.slice(0, 5).map(({ place }) => place), ...partsFiles(build)],
        basis: 'read',
        message: `${listed(steps.map((step) => stepName(build, step)))} ${steps.length === 1 ? 'speaks' : 'speak'} of ${name}; neither ${partsFileName(build)} nor a list of tools holds any.`,
        consequence: 'A builder finds out in the middle of the step that something is lacking.',
        remedy: `Add a row for the ${name} with size and amount, or say which part they come with.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'verbs, terminals, and what the lists hold under a neighbouring name',
        files: {
          'guide.md':
            '# Night light\n\n## Parts\n\n- 1 × white LED\n- 4 × M3 machine screw\n- 30 cm hook-up wire\n- Superglue\n\n## Fit the lamp\n\nSolder the LED. Wire it up and tape it down. Glue the lid.\n\n## Close it\n\nScrew the lid on. The lid screws into the base. Use a tape measure. Loosen the screws of the terminal. Put in the four screws. Find the screw holes. Cut a piece of wire. Add some glue.\n',
        },
      },
      {
        title: 'what a step declares is the business of the list of parts',
        files: {
          'guide.md':
            '# Night light\n\n## Close the case\n\n- Parts: lid, M3 screw × 4\n\nDrive the four screws in.\n\n## Test it\n\nInsert the cell. Use tape or a clip. If you like, use some glue. Line up the screw holes. Tighten the nut of the switch.\n',
          'parts.csv': 'Reference,Quantity,Description\n,1,Lid\n,1,Case bottom\n',
        },
      },
      {
        title: 'solder among the tools; a header as a heading',
        files: {
          'guide.md':
            '# Night light\n\n## Tools\n\n- Soldering iron and solder\n- Masking tape\n\n## Prepare the page header\n\nApply solder to the pad. Hold it with tape.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
        },
      },
    ],
    fails: [
      {
        title: 'screws and heat-shrink tube that no list knows',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the lamp\n\nSlide heat-shrink tubing over the leads.\n\n## Close the case\n\nFix the lid with four screws. Tighten the M3 screws.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n,1,Lid\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'heat-shrink tube' },
          { file: 'guide.md', line: 9, words: 'screws' },
        ],
      },
      {
        title: 'what cleans the board',
        files: {
          'guide.md':
            '# Night light\n\n## Tools\n\n- Soldering iron\n- Alcohol\n\n## Clean the board\n\nSolder D1. Wash the flux off with alcohol and cotton swabs, then dry it with paper towels.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
        },
        expect: [
          { file: 'guide.md', line: 10, words: 'cotton buds' },
          { file: 'guide.md', line: 10, words: 'paper towels' },
        ],
      },
      {
        title: 'wire and double-sided tape',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the lamp\n\nCut two pieces of red wire and solder them to D1.\n\n## Mount it\n\nStick it down with double-sided tape.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'wire' },
          { file: 'guide.md', line: 9, words: 'tape' },
        ],
      },
    ],
  },
});

interface Thing {
  readonly name: string;
  readonly nouns?: readonly string[];
  readonly phrases?: readonly string[];
  readonly covers: readonly string[];
}

const before = `(?:${table.before.join('|')}|\\d+(?: ?[x×])?|m\\d\\S*)`;

const otherTalk = new RegExp(`(?<![\\p{L}\\p{N}])(?:${table.not.join('|')})(?![\\p{L}\\p{N}])`, 'iu');

const things = (table.things as readonly Thing[]).map(({ name, nouns = [], phrases = [], covers }) => {
  const finds = [
    ...nouns.map(
      (noun) =>
        new RegExp(
          `(?<=(?<![\\p{L}\\p{N}])${before} )${noun}s?(?![\\p{L}\\p{N}-]| (?:${table.tails.join('|')})(?!\\p{L}))`,
          'giu',
        ),
    ),
    ...phrases.map((phrase) => new RegExp(`(?<![\\p{L}\\p{N}-])${phrase}(?![\\p{L}\\p{N}-])`, 'giu')),
  ];
  const any = new RegExp([...nouns, ...phrases].join('|'), 'iu');
  return {
    name,
    covers: covers.map((words) => tokensOf(words).join(' ')),
    /** Where a sentence speaks of it. */
    spansIn: remember((sentence): readonly Span[] =>
      any.test(sentence) && !otherTalk.test(sentence)
        ? finds
            .flatMap((find) => [...sentence.matchAll(find)])
            .map((match): Span => [match.index, match.index + match[0].length])
            .filter(([from, to]) => !isChoice(sentence, from, to))
        : [],
    ),
  };
});

const anyThing = remember((sentence) => things.some(({ spansIn }) => spansIn(sentence).length > 0));

function mentions(
  { words, place, step }: SpokenText,
  thing: (typeof things)[number],
): { place: Place; step: string }[] {
  if (step === null) return [];
  return sentencesOf(words).flatMap(({ text, start }) =>
    thing.spansIn(text).map(([from, to]) => ({ place: placeInside(place, start + from, start + to), step })),
  );
}

/** 'A piece of wire or tweezers': either will do, and the other may be listed. */
function isChoice(sentence: string, from: number, to: number): boolean {
  return /\bor\s+(?:\p{L}+\s+)?$/iu.test(sentence.slice(0, from)) || /^\s+or\b/iu.test(sentence.slice(to));
}

const tokenLine = remember((text) => tokensOf(text).join(' '));

/** All words of the lists and of what steps declare, as tokens between blanks. */
function wordsOfLists({ build, facts }: Judged): string {
  const declared = Object.values(facts.steps).flatMap(({ uses, tools }) => [
    ...uses.map(({ value }) => value.named),
    ...tools.map(({ value }) => value),
  ]);
  const lists = build.instructions.sections
    .filter(({ role }) => role === 'parts' || role === 'tools')
    .flatMap(({ blocks }) => blocks.map(({ place }) => place.quote));
  const texts = [
    ...build.parts.map((part) => `${rowWords(part)} ${part.section ?? ''}`),
    ...build.tools.map(({ name, note }) => `${name} ${note ?? ''}`),
    ...declared,
    ...lists,
  ];
  return ` ${texts.map(tokenLine).join(' | ')} `;
}
