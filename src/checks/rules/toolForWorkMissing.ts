import type { Judged } from '#core/assembled.ts';
import { slugOf } from '#notation/names.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import knowledge from '../knowledge/tools.json';
import { holdsWord, namesTools, wordsOfTools } from '../listedTools.ts';
import { listed, stepName } from '../say.ts';
import { toolsLackingInSteps } from '../toolsOfSteps.ts';
import { type Work, workFor } from '../workForTools.ts';
import { frontOf, isWrittenOut } from '../writtenGuide.ts';

export const toolForWorkMissing = defineCheck({
  id: 'tool-for-work-missing',
  title: 'The list of tools, and that of each step, holds a tool for all the work that the steps tell a builder to do.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Crimping with pliers, or pressing inserts in without an iron, ruins the part.',
  basis: 'common practice: which tool does which work',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    yield* lackingInList(judged);
    yield* lackingInSteps(judged);
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
        title: 'steps that list a tool once and go on with it, and work that is open or done by hand',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistor\n\n- Tools: soldering iron\n\nSolder R1.\n\n## Fit the lamp\n\n- Tools: tweezers\n\nSolder D1. If a joint is dull, solder it again.\n\n## Close it\n\n- Tools: none\n\nTurn the screws in by hand. Cut the tape.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor\nD1,1,White LED 5 mm\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\nTweezers,yes\nScrewdriver,yes\nSide cutters,yes\n',
        },
      },
      {
        title: 'a page that has only begun',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' },
      },
    ],
    fails: [
      {
        title: 'a part with screws is screwed on',
        files: {
          'guide.md':
            '# Fan\n\n## Tools\n\n- Screwdriver\n- Multimeter\n\n## Close it\n\n- Tools: none\n\nScrew MP1 on.\n',
          'parts.csv': 'Reference,Quantity,Description\nMP1,1,"Grille, with four screws"\nU1,1,Module\n',
        },
        expect: [{ file: 'guide.md', line: 10, words: 'Screw MP1 on' }],
      },
      {
        title: 'a trimmer is turned in a step that lists the meter alone',
        files: {
          'guide.md':
            '# Fan\n\n## Tools\n\n- Screwdriver\n- Multimeter\n\n## Set the module\n\n- Tools: multimeter\n\nTurn the trimmer until you read 5 V.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Module\n',
        },
        expect: [{ file: 'guide.md', line: 10, words: 'Turn the trimmer' }],
      },
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
        title: 'steps that list their tools, and leave out those of their own words',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistor\n\n- Tools: soldering iron\n\nSolder R1.\n\n## Fit the lamp\n\n- Tools: soldering iron\n\nSolder D1.\n\n## Wire it\n\n- Tools: strippers\n\nStrip 4 mm from each end. Solder red to BT1.+.\n\n## Close it\n\n- Tools: none\n\nTighten the four screws.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor\nD1,1,White LED 5 mm\nBT1,1,Battery box\n',
          'tools.csv':
            'tool,needed\nSoldering iron,yes\nStrippers,yes\n"Screwdriver, cross recess",yes\nSide cutters,yes\n',
        },
        expect: [
          { file: 'guide.md', line: 17, words: 'soldering iron' },
          { file: 'guide.md', line: 23, words: 'screwdriver' },
        ],
      },
      {
        title: 'small parts without anything to hold them',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistor\n\nSolder R1.\n',
          'parts.csv': 'Reference,Quantity,Package,Description\nR1,1,0805,Resistor\nD1,1,5 mm,White LED\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\nSide cutters,yes\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'tweezers' }],
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

function* lackingInList(judged: Judged): Iterable<FindingDraft> {
  const known = wordsOfTools(judged);
  const wanted = [
    ...knowledge.tools.map((entry) => ({ ...entry, work: workFor(judged, entry) })),
    { ...knowledge.smallParts, work: smallPartsOf(judged) },
  ];
  const lacking = wanted.filter((entry) => entry.work.length > 0 && !holdsWord(known, entry.known));
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
}

/** Steps that list their tools, and not those of the work that they tell to do. */
function* lackingInSteps(judged: Judged): Iterable<FindingDraft> {
  for (const { step, tools, fact, mend } of toolsLackingInSteps(judged)) {
    const [first] = tools;
    if (first === undefined) continue;
    yield {
      subjects: [`step:${step}`],
      mark: tools.map(({ name }) => slugOf(name)).join(' '),
      sides: [fact.place, ...tools.flatMap(({ work }) => work.slice(0, 2).map(({ place }) => place))].slice(0, 5),
      basis: 'read',
      message: `The step ${stepName(judged.build, step)} says ‘${first.work[0]?.words ?? ''}’ and does not list ${listed(tools.map(({ name }) => name))} among its tools.`,
      consequence: 'A builder sits down without it and has to get up in the middle of the work.',
      remedy: `Add ${listed(tools.map(({ name }) => name))} to the tools of the step.`,
      mend,
    };
  }
}

/** Surface-mount parts that are soldered by hand, as their packages tell. */
function smallPartsOf({ build, facts }: Judged): Work[] {
  const solders = facts.actions.some(({ kind, told }) => kind === 'solder' && told === 'do');
  if (!solders) return [];
  return build.parts
    .filter(({ package: size, fitted }) => fitted && size !== null && smallPackage.test(size))
    .map((part) => ({
      step: null,
      words: `Solder ${part.refs[0] ?? part.description} (${part.package})`,
      place: part.cells.package ?? part.place,
    }));
}

const smallPackage = /^(?:SMD ?)?(?:0201|0402|0603|0805|1206|1210|SOT-?\d|SOD-?\d|SOIC|SSOP|TSSOP|MSOP|QFN|LQFP|TQFP)/i;
