import type { Judged } from '#core/assembled.ts';
import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { slugOf, tokensOf } from '#notation/names.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { rowWords } from '../partWords.ts';
import { partsFileName, partsFiles } from '../say.ts';
import { sentencesOfSection } from '../stepSentences.ts';

export const includedNotListed = defineCheck({
  id: 'included-not-listed',
  title: 'What the guide presents as part of the build stands in a list.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A guide that was written for a kit speaks of things that whoever buys by the list never gets.',
  basis:
    'common practice: ‘the included cable’, ‘the kit holds a …’ and ‘this is a …’ on a page of parts, less the lists',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run(judged) {
    const { build } = judged;
    if (build.parts.length < 3) return;
    const presented = build.instructions.sections.flatMap((section) =>
      presentedIn(section, build.instructions.sections),
    );
    const lists = presented.length === 0 ? [] : listedThings(judged);
    const found = presented.filter(
      ({ thing }) => !lists.some((words) => tokensOf(thing).every((word) => words.has(word) || words.has(`${word}s`))),
    );
    for (const [name, places] of groupedBy(found, ({ thing }) => slugOf(thing))) {
      const [first] = places;
      if (first === undefined) continue;
      yield {
        subjects: [`part:${name}`],
        sides: [...places.slice(0, 4).map(({ place }) => place), ...partsFiles(build)],
        basis: 'read',
        message: `The guide speaks of ‘${first.thing}’ as something that the builder has; neither ${partsFileName(build)} nor a list of tools holds it.`,
        consequence: 'A builder who has bought what is listed does not have it, or wonders whether it is needed.',
        remedy: `Add a row for it, or say who gets it and how the others go on without.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'lists of parts and of tools hold them',
        files: {
          'guide.md':
            '# Night light\n\n## Tools\n\n- The hex key that comes with the motor\n\n## Join it\n\nTake the included USB cable. Turn the supplied hex key. The kit contains two magnets.\n',
          'parts.csv': 'Quantity,Description\n1,"USB cable, A to C"\n2,Magnets\n1,Lid\n1,White LED\n',
        },
      },
      {
        title: 'words that present no thing',
        files: {
          'guide.md':
            '# Night light\n\n## Join it\n\nThe included sketch shows it. The library includes a test. This is a good place for a break.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Quantity,Description\n1,USB cable\n1,Lid\n1,White LED\n',
        },
      },
    ],
    fails: [
      {
        title: 'the cable of a kit',
        files: {
          'guide.md':
            '# Night light\n\n## Join it\n\nConnect the included USB cable to the lamp.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Quantity,Description\n1,Battery cable\n1,Lid\n1,White LED\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '‘USB cable’' }],
      },
      {
        title: 'a radio in the kit, and a bracket on the page of parts',
        files: {
          'guide.md':
            '# Night light\n\n## Parts\n\nAll of them are in the list.\n\n### The case\n\nThis is a wall bracket that holds the lamp.\n\n## Join it\n\nPlug the lead in. The kit also includes a radio module for later.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Quantity,Description\n1,Battery cable\n1,Lid\n1,White LED\n',
        },
        expect: [
          { file: 'guide.md', line: 9, words: '‘wall bracket’' },
          { file: 'guide.md', line: 13, words: '‘radio module’' },
        ],
      },
    ],
  },
});

const nouns =
  'cable|lead|screw|bolt|standoff|spacer|adapter|adaptor|supply|charger|battery|module|modem|antenna|driver|screwdriver|key|wrench|spanner|bracket|clamp|sensor|board|magnet|card|fan|motor|servo|knob|hook|strap|stand|tape|sticker|gasket|seal|plug|socket|connector|remote|display|lamp|spring|clip|case|lid';
const phrase = `((?:[\\p{L}\\d.-]+ ){0,2}?(?:${nouns})s?)(?![\\p{L}\\d-])`;
const given = new RegExp(`\\b(?:the|your|an?) (?:included|supplied|provided|enclosed) ${phrase}`, 'giu');
const kitHolds = new RegExp(
  `\\b(?:kit|box|bag|parcel|set) (?:also )?(?:includes|contains|holds|comes with) (?:an?|the|one|two|three|four|some) ${phrase}`,
  'giu',
);
const thisIs = new RegExp(`^(?:this|here) is (?:an?|the|your) ${phrase}`, 'giu');

interface Presented {
  readonly thing: string;
  readonly place: TextPlace;
}

/** Things that a section speaks of as given; on pages about parts also those that it introduces. */
function presentedIn(section: Section, all: readonly Section[]): Presented[] {
  const isAboutParts =
    section.role === 'prose' &&
    all.some(
      ({ role, file, heading }) => role === 'parts' && file === section.file && section.parents.includes(heading),
    );
  if (section.role === 'parts' || section.role === 'tools') return [];
  const patterns = isAboutParts ? [given, kitHolds, thisIs] : [given, kitHolds];
  return sentencesOfSection(section).flatMap(({ text, place }) =>
    patterns.flatMap((pattern) =>
      [...text.matchAll(pattern)].flatMap((match) => {
        const thing = match[1];
        if (thing === undefined || /\bif\b/iu.test(text.slice(0, match.index))) return [];
        const end = match.index + match[0].length;
        return [{ thing, place: placeInside(place, end - thing.length, end) }];
      }),
    ),
  );
}

/** The words of each row, each tool and each thing that a step declares or makes. */
function listedThings({ build, facts }: Judged): ReadonlySet<string>[] {
  const declared = Object.values(facts.steps).flatMap(({ uses, tools, makes }) => [
    ...uses.map(({ value }) => value.named),
    ...tools.map(({ value }) => value),
    ...makes.map(({ value }) => value),
  ]);
  const lists = build.instructions.sections
    .filter(({ role }) => role === 'parts' || role === 'tools')
    .flatMap(sentencesOfSection)
    .map(({ text }) => text);
  return [
    ...build.parts.map((part) => `${rowWords(part)} ${part.section ?? ''}`),
    ...build.tools.map(({ name, note }) => `${name} ${note ?? ''}`),
    ...declared,
    ...lists,
  ].map((text) => new Set(tokensOf(text)));
}
