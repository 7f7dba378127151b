import type { Action } from '#core/action.ts';
import type { Judged } from '#core/assembled.ts';
import type { Place } from '#core/place.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { defineCheck } from '../defineCheck.ts';
import knowledge from '../knowledge/tools.json';
import { holdsWord, namesTools, wordsOfTools } from '../listedTools.ts';
import { listed } from '../say.ts';
import { frontOf, isWrittenOut } from '../writtenGuide.ts';

export const toolForWorkMissing = defineCheck({
  id: 'tool-for-work-missing',
  title: 'The list of tools holds a tool for all the work that the steps tell a builder to do.',
  weight: 'slows',
  audience: 'builder',
  why: 'Crimping with pliers, or pressing inserts in without an iron, ruins the part.',
  basis: 'common practice: which tool does which work',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const known = wordsOfTools(judged);
    const lacking = knowledge.tools.flatMap((entry) => {
      const work = workFor(judged, entry);
      return work.length === 0 || holdsWord(known, entry.known) ? [] : [{ tool: entry.tool, work }];
    });
    if (lacking.length === 0) return;
    if (!namesTools(judged)) {
      if (!isWrittenOut(judged.build)) return;
      yield {
        subjects: ['build:tools'],
        sides: [
          frontOf(judged.build),
          ...lacking.map(({ work }) => work[0]?.place).filter((place) => place !== undefined),
        ].slice(0, 5),
        basis: 'read',
        message: `There is no list of tools; the steps call for ${listed(lacking.map(({ tool, work }) => `${tool} (‘${work[0]?.words ?? ''}’)`))}.`,
        consequence: 'A builder finds out in the middle of a step what to fetch or buy.',
        remedy: 'Add a section ‘Tools’, or a file tools.csv, that names them.',
      };
      return;
    }
    for (const { tool, work } of lacking) {
      yield {
        subjects: [`tool:${tool.replace(/^an? /, '').replaceAll(' ', '-')}`],
        sides: work.slice(0, 5).map(({ place }) => place),
        basis: 'read',
        message: `The guide says ‘${work[0]?.words ?? ''}’; the list of tools names nothing to do it with, such as ${tool}.`,
        consequence: 'A builder starts without it and has to stop, or makes do with the wrong tool.',
        remedy: `Add ${tool} to the list of tools.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'every tool by some name; work that is only spoken of, forbidden or done by hand',
        files: {
          'guide.md':
            '# Night light\n\n## Make the lead\n\nStrip 4 mm from each end. Crimp both ends. Do not drill.\n\n## Fit the lamp\n\nSolder D1. The glued joint holds. Tighten the nut by hand.\n\n## Load the code\n\nUpload the sketch over the USB cable.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n,1,USB cable\n',
          'tools.csv': 'tool,needed\nSoldering station,yes\nCrimper,yes\nSharp knife,yes\n',
        },
      },
      {
        title: 'the introduction names the tools',
        files: {
          'guide.md':
            '# Night light\n\nYou need a soldering iron, side cutters and a drill.\n\n## Drill the lid\n\nDrill it.\n\n## Fit the lamp\n\nSolder D1 and cut its leads.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
      {
        title: 'a page that has only begun',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' },
      },
    ],
    fails: [
      {
        title: 'crimping and drilling, with an iron alone',
        files: {
          'guide.md':
            '# Night light\n\n## Make the lead\n\nCrimp both ends.\n\n## Fit the lamp\n\nDrill a hole of 5 mm. Solder D1.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\nSide cutters,yes\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'a crimping tool' },
          { file: 'guide.md', line: 9, words: 'a drill' },
        ],
      },
      {
        title: 'a reading without a meter, screws without a driver',
        files: {
          'guide.md':
            '# Night light\n\n## Test it\n\n- Measure: BT1.+ – BT1.- 3.0 V\n\nProbe both ends.\n\n## Close it\n\nTighten the four screws of the lid.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,Battery box\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\nSide cutters,yes\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'a multimeter' },
          { file: 'guide.md', line: 11, words: 'a screwdriver' },
        ],
      },
      {
        title: 'no list of tools at all',
        files: {
          'guide.md':
            '# Night light\n\n## Make the lead\n\nStrip both ends.\n\n## Fit the lamp\n\nSolder D1.\n\n## Close it\n\nGlue the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 1, words: 'no list of tools' }],
      },
    ],
  },
});

type Entry = (typeof knowledge.tools)[number];

interface Work {
  readonly words: string;
  readonly place: Place;
}

/** Where the guide tells a builder to do what the tool is for. */
function workFor(judged: Judged, entry: Entry): Work[] {
  const told = judged.facts.actions
    .filter(({ kind, told: how, step }) => how === 'do' && step !== null && entry.work.includes(kind))
    .map((action) => ({ words: sentenceOf(judged, action), place: action.place }))
    .filter(({ words }) => suits(words, entry));
  return entry.work.includes('measure') ? [...readingsOf(judged), ...told] : told;
}

function suits(words: string, entry: Entry): boolean {
  const plain = words.toLowerCase();
  const needs = 'with' in entry ? (entry.with ?? []) : [];
  const spares = 'without' in entry ? (entry.without ?? []) : [];
  // The verb itself is no object: 'screw the lid on' names no screw.
  const rest = plain.replace(/^\W*\p{L}+\s/u, ' ');
  return (needs.length === 0 || holdsWord(rest, needs)) && !holdsWord(plain, spares);
}

/** Readings that steps declare. */
function readingsOf({ build, facts }: Judged): Work[] {
  return build.instructions.sections.flatMap(({ id }) =>
    (facts.steps[id]?.measures ?? []).flatMap(({ value, places }) =>
      places.map((place) => ({ words: `Measure: ${value.text}`, place })),
    ),
  );
}

/** The sentence in which the work stands, as written. */
function sentenceOf({ build }: Judged, { place }: Action): string {
  const text = build.texts.get(place.file)?.text ?? '';
  const from = Math.max(text.lastIndexOf('\n\n', place.span[0]), 0);
  const end = text.indexOf('\n\n', place.span[1]);
  const block = text.slice(from, end < 0 ? text.length : end);
  const at = place.span[0] - from;
  const sentence = sentencesOf(block).find(({ start, text: words }) => start <= at && at < start + words.length);
  return (sentence?.text ?? place.quote).replace(/\s+/g, ' ').trim();
}
