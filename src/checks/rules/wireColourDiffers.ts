import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import { type Connection, endpointId } from '#core/connection.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { type SpokenText, spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import table from '../knowledge/wireColours.json';
import { listed } from '../say.ts';

export const wireColourDiffers = defineCheck({
  id: 'wire-colour-differs',
  title: 'The colours of wires in the text are those of the wiring.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Once a loom is made, colours are all that a builder goes by; one wrong word swaps two wires.',
  basis: 'common practice; names of colours as in IEC 60757',
  needs: { subject: ['wiring', 'steps'], witnesses: [] },
  *run({ build }: Judged) {
    for (const spoken of spokenTexts(build).filter(({ step }) => step !== null)) {
      for (const { text, start } of sentencesOf(spoken.words)) yield* inSentence(build, spoken, text, start);
    }
  },
  examples: {
    passes: [
      {
        title: 'the same colours, in words and in codes',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the ring\n\n- Parts: H1\n\nSolder the green wire from U1.GPIO5 to H1.IN. Solder red to H1.5V and grey to H1.GND.\n',
          'wiring.csv': 'from,to,net,colour\nU1.GPIO5,H1.IN,RING,GN\nU1.5V,H1.5V,5V,red\nU1.GND,H1.GND,GND,gray\n',
        },
      },
      {
        title: 'a wire that the table gives no colour, a pin with several, and colours of other things',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the ring\n\n- Parts: H1\n\nSolder the blue wire to H1.IN and the white wire to U1.GND. The red light next to U1.5V comes on. Hold the black probe to U1.GND.\n',
          'wiring.csv':
            'from,to,net,colour\nU1.GPIO5,H1.IN,RING,\nU1.5V,H1.5V,5V,orange\nU1.GND,H1.GND,GND,black\nU1.GND,SW1.2,GND,white\n',
        },
      },
    ],
    fails: [
      {
        title: 'two wires have changed colours since',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the ring\n\n- Parts: H1\n\nSolder the yellow wire from U1.GPIO5 to H1.IN. Solder red to H1.5V.\n',
          'wiring.csv': 'from,to,net,colour\nU1.GPIO5,H1.IN,RING,green\nU1.5V,H1.5V,5V,orange\n',
        },
        expect: [
          { file: 'guide.md', line: 7, words: 'yellow' },
          { file: 'wiring.csv', line: 3, words: 'orange' },
        ],
      },
      {
        title: 'plus and minus are swapped in the text',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the battery\n\n- Parts: BT1\n\nJoin the black lead to BT1.+ and the red lead to BT1.-.\n',
          'wiring.csv': 'from,to,net,colour\nBT1.+,SW1.1,BAT,red\nBT1.-,U1.GND,GND,black\n',
        },
        expect: [
          { file: 'wiring.csv', line: 2, words: 'BT1.+' },
          { file: 'wiring.csv', line: 3, words: 'BT1.-' },
        ],
      },
    ],
  },
});

const names = new Map(table.colours.flatMap((one) => one.map((name) => [name, one[0] ?? name] as const)));
const colour = `(?<colour>${table.colours
  .flat()
  .filter((name) => name.length > 3 || name === 'red')
  .join('|')})`;
const end = '(?<end>[A-Za-z]+\\d+\\.[A-Za-z0-9_+-]+)';
/** 'the green wire from U1.D5 to …', 'red to H1.5V', 'black to the middle lug ENC1.C'. */
const toldWires = [
  new RegExp(
    `\\b${colour}(?:\\s+(?:wire|lead|piece|cable|one))?\\s+(?:(?:goes|runs)\\s+)?(?:on )?to\\s+(?:(?!and\\b|to\\b|from\\b)[\\p{L}-]+\\s+){0,4}?${end}`,
    'giu',
  ),
  new RegExp(
    `\\b${colour}\\s+(?:wire|lead|piece|cable)\\s+from\\s+(?:(?!and\\b|to\\b)[\\p{L}-]+\\s+){0,4}?${end}`,
    'giu',
  ),
];
/** Probes and lights have colours too, and a reading joins nothing. */
const otherThings = /\b(?:probe|clip|light|led|meter|multimeter|measure|read|not|never|instead)\b/i;

function* inSentence(build: Build, spoken: SpokenText, sentence: string, start: number): Iterable<FindingDraft> {
  if (otherThings.test(sentence)) return;
  for (const match of toldWires.flatMap((pattern) => [...sentence.matchAll(pattern)])) {
    const told = names.get(match.groups?.colour?.toLowerCase() ?? '');
    const pin = (match.groups?.end ?? '').toUpperCase();
    const rows = build.connections.filter(({ from, to }) => [from, to].some((one) => endpointId(one) === pin));
    const wired = rows.map(coloursOf);
    if (told === undefined || rows.length === 0 || wired.some((one) => one.length === 0 || one.includes(told)))
      continue;
    const at = start + match.index;
    yield {
      subjects: [`connection:${rows[0]?.id ?? pin}`],
      mark: `${told} ${pin}`,
      sides: [
        placeInside(spoken.place, at, at + match[0].length),
        ...rows.slice(0, 4).map(({ cells, place }) => cells.colour ?? place),
      ],
      basis: 'read',
      message: `The text takes a ${told} wire to ${pin}; the wiring has ${listed([...new Set(wired.flat())])} there.`,
      consequence: 'A builder who goes by colours later swaps wires.',
      remedy: 'Decide which colour is right, and correct the other.',
    };
  }
}

/** The colours that a row names; empty where one of its words is none. */
function coloursOf(row: Connection): string[] {
  const words = (row.colour ?? '')
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '');
  const known = words.flatMap((word) => names.get(word) ?? []);
  return known.length === words.length ? known : [];
}
