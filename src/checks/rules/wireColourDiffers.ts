import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import { type Connection, endpointId } from '#core/connection.ts';
import { remember, rememberFor } from '#core/remember.ts';
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
      {
        title: 'several wires of a colour in one sentence, two colours of one wire, and the colour of a socket',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the ring\n\n- Parts: H1\n\nSolder black wires from H1.GND and SW1.2 to U1.GND and red ones from U1.5V to H1.5V. Lay yellow from U1.GPIO5, which is DATA, to H1.IN. Push the white socket from U1.GPIO5 towards H1.IN.\n',
          'wiring.csv':
            'from,to,net,colour\nU1.GPIO5,H1.IN,RING,green-yellow\nU1.5V,H1.5V,5V,red\nU1.GND,H1.GND,GND,black\nU1.GND,SW1.2,GND,black\n',
        },
      },
    ],
    fails: [
      {
        title: 'one ground wire of two, and a wire that is cut in the same sentence',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the ring\n\n- Parts: H1\n\nSolder black wires from H1.GND and SW1.2 to U1.GND.\n\nCut a red piece to 12 cm and solder it from U1.5V, the upper pin, to H1.5V.\n',
          'wiring.csv':
            'from,to,net,colour\nU1.5V,H1.5V,5V,orange\nU1.5V,C1.+,5V,red\nU1.GND,H1.GND,GND,black\nU1.GND,SW1.2,GND,white\n',
        },
        expect: [
          { file: 'guide.md', line: 7, words: 'SW1.2 to U1.GND' },
          { file: 'guide.md', line: 9, words: 'U1.5V to H1.5V' },
        ],
      },
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
const pinForm = '[A-Za-z]\\w*\\.[A-Za-z0-9_+-]+';
const end = `(?<end>${pinForm})`;
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
/** A colour that is said of a wire: no other noun follows. */
const colouredWire = new RegExp(
  `(?<![\\p{L}-])${colour}\\s+(?:(?:hook-up|jumper|insulated|stranded|solid)\\s+)?(?:wires?|leads?|pieces?|cables?|ones?|lines?|threads?|strands?|jumpers?|cores?|conductors?|from|to|between|goes|runs)(?!\\p{L})`,
  'giu',
);
/** Probes and lights have colours too, and a reading joins nothing. */
const otherThings = /\b(?:probe|clip|light|led|meter|multimeter|measure|read|not|never|instead)\b/i;

/** What a sentence says of the wires between some pins. */
interface ToldWire {
  readonly colour: string;
  /** One pin, or the two ends of one row. */
  readonly pins: readonly string[];
  readonly from: number;
  readonly to: number;
}

const anyColour = new RegExp(`\\b${colour}`, 'iu');
const speaksOfColour = remember((sentence) => anyColour.test(sentence) && !otherThings.test(sentence));

function* inSentence(build: Build, spoken: SpokenText, sentence: string, start: number): Iterable<FindingDraft> {
  if (!speaksOfColour(sentence)) return;
  const pairs = toldPairs(build, sentence);
  const single = toldPins(sentence).filter(({ from }) => !pairs.some((pair) => pair.from === from));
  for (const { colour: told, pins, from, to } of [...pairs, ...single]) {
    const rows = rowsBetween(build, pins);
    const wired = rows.map(coloursOf);
    if (rows.length === 0 || wired.some((one) => one.length === 0 || one.includes(told))) continue;
    const where = pins.length === 1 ? `to ${pins[0]}` : `from ${pins.join(' to ')}`;
    yield {
      subjects: [`connection:${rows[0]?.id ?? pins.join('~')}`],
      mark: `${told} ${pins.join(' ')}`,
      sides: [
        placeInside(spoken.place, start + from, start + to),
        ...rows.slice(0, 4).map(({ cells, place }) => cells.colour ?? place),
      ],
      basis: 'read',
      message: `The text takes a ${told} wire ${where}; the wiring has ${listed([...new Set(wired.flat())])} there.`,
      consequence: 'A builder who goes by colours later swaps wires.',
      remedy: 'Decide which colour is right, and correct the other.',
    };
  }
}

/** Colours with one pin: 'red to H1.5V'. */
function toldPins(sentence: string): ToldWire[] {
  return toldWires
    .flatMap((pattern) => [...sentence.matchAll(pattern)])
    .flatMap((match) => {
      const told = colourIn(match);
      const pin = (match.groups?.end ?? '').toUpperCase();
      return told === undefined
        ? []
        : [{ colour: told, pins: [pin], from: match.index, to: match.index + match[0].length }];
    });
}

/** Colours with both ends of a row: 'yellow wires from R2.2 to U1.6 and from U1.3, which is DATA, to R4.1'. */
function toldPairs(build: Build, sentence: string): ToldWire[] {
  const colours = [...sentence.matchAll(colouredWire)];
  const known = rowsByPin(build);
  return colours.flatMap((match, index) => {
    const told = colourIn(match);
    if (told === undefined) return [];
    // One colour in a sentence is that of its wire, wherever it stands; of several, each goes with what follows it.
    const from = colours.length === 1 ? 0 : match.index;
    const to = colours[index + 1]?.index ?? sentence.length;
    return pairsIn(sentence.slice(from, to), known)
      .filter((pins) => rowsBetween(build, pins).length > 0)
      .map((pins) => ({ colour: told, pins, from: match.index, to: match.index + match[0].length }));
  });
}

/** Pins that words take from one to another: each before a 'to' with each after it, up to the next 'from'. */
function pairsIn(words: string, known: ReadonlyMap<string, unknown>): [string, string][] {
  return words.split(/\b(?:from|between)\b/i).flatMap((part, index) => {
    const ends = [...part.matchAll(new RegExp(`(?<![\\w.])${pinForm}`, 'gu'))]
      .map((match) => ({ pin: pinIn(match[0], known), at: match.index }))
      .filter(({ pin }) => known.has(pin));
    const [first, second] = ends;
    if (first === undefined || second === undefined) return [];
    if (ends.length === 2) return [[first.pin, second.pin]];
    const turn = part.slice(first.at).search(/\bto\b/i);
    if (turn < 0 || index === 0) return [];
    const isBefore = ({ at }: { at: number }) => at < first.at + turn;
    const targets = ends.filter((one) => !isBefore(one));
    return ends
      .filter(isBefore)
      .flatMap((source) => targets.map((target): [string, string] => [source.pin, target.pin]));
  });
}

/** A pin as the wiring has it; a dash or a plus at the end may belong to the sentence. */
function pinIn(written: string, known: ReadonlyMap<string, unknown>): string {
  const pin = written.toUpperCase();
  return known.has(pin) ? pin : pin.replace(/[+-]+$/, '');
}

function colourIn(match: RegExpMatchArray): string | undefined {
  return names.get(match.groups?.colour?.toLowerCase() ?? '');
}

/** Rows of the wiring, in its order, by the pins at their ends. */
const rowsByPin = rememberFor(({ connections }: Build): ReadonlyMap<string, readonly Connection[]> => {
  const rows = new Map<string, Connection[]>();
  for (const row of connections) {
    for (const pin of new Set([endpointId(row.from), endpointId(row.to)])) {
      const here = rows.get(pin);
      if (here === undefined) rows.set(pin, [row]);
      else here.push(row);
    }
  }
  return rows;
});

/** Rows that hold all of the pins. */
function rowsBetween(build: Build, [first = '', ...others]: readonly string[]): Connection[] {
  const known = rowsByPin(build);
  return (known.get(first) ?? []).filter((row) => others.every((pin) => known.get(pin)?.includes(row)));
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
