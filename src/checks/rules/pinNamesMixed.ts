import type { Judged } from '#core/assembled.ts';
import type { Endpoint } from '#core/connection.ts';
import type { TextPlace } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import { parsePin } from '#notation/pins.ts';
import { isNumberedAsPrinted, pinNumberOn } from '../comparePinsOn.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { proseOf } from '../proseOf.ts';
import { listed } from '../say.ts';

export const pinNamesMixed = defineCheck({
  id: 'pin-names-mixed',
  title: 'The pins of one board are named by one scheme, or the text says which name is which.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'On several boards the pin printed D5 is GPIO14, and a bare 5 may be either, or the fifth pin from the corner.',
  basis: 'common practice; labels of boards as in the variant headers of their cores, from memory',
  needs: { subject: ['wires'], witnesses: [] },
  *run(judged) {
    for (const { value } of judged.facts.controllers) {
      const part = judged.build.parts.find(({ id }) => id === value.part);
      const board = [part?.description, part?.mpn, ...judged.build.targets.map((one) => one.board)]
        .filter(Boolean)
        .join(' ');
      yield* mixed(judged, value.ref, board);
      yield* impossible(judged, value.ref, board);
    }
  },
  examples: {
    passes: [
      {
        title: 'one scheme, with analogue and supply pins beside it',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP8266 board (NodeMCU form)\n',
          'wiring.csv': 'from,to,net\nU1.D5,H1.IN,RING\nU1.D6,SW1.1,BUTTON\nU1.A0,R1.1,LIGHT\nU1.GND,H1.GND,GND\n',
        },
      },
      {
        title: 'two schemes, and a sentence that says so',
        files: {
          'guide.md':
            '# Night light\n\nNames such as D5 are printed on the board; GPIO numbers are those of the chip.\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP8266 board (NodeMCU form)\n',
          'wiring.csv': 'from,to,net\nU1.D5,H1.IN,RING\nU1.GPIO4,SW1.1,BUTTON\n',
        },
      },
      {
        title: 'a board that prints the numbers of the chip, and a pair that is right',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder D5 (GPIO5) to the ring.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'wiring.csv': 'from,to,net\nU1.D5,H1.IN,RING\nU1.GPIO4,SW1.1,BUTTON\n',
        },
      },
    ],
    fails: [
      {
        title: 'labels and numbers of the chip on a board where they differ',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP8266 board (NodeMCU form)\n',
          'wiring.csv': 'from,to,net\nU1.D5,H1.IN,RING\nU1.GPIO4,SW1.1,BUTTON\n',
        },
        expect: [{ file: 'wiring.csv', line: 3, words: 'GPIO4' }],
      },
      {
        title: 'a pair that no such board has',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder the ring to D5 (GPIO5).\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP8266 board (NodeMCU form)\n',
          'wiring.csv': 'from,to,net\nU1.D5,H1.IN,RING\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'GPIO14' }],
      },
    ],
  },
});

type Scheme = 'digital' | 'gpio' | 'number';

const schemes: Readonly<Record<Scheme, string>> = {
  digital: 'as printed on boards',
  gpio: 'by the number of the chip',
  number: 'by a bare number',
};

function* mixed({ build }: Judged, ref: string, board: string): Iterable<FindingDraft> {
  // Where printed names are the numbers of the chip, a builder cannot go wrong.
  if (isNumberedAsPrinted(board)) return;
  const first = new Map<Scheme, { end: Endpoint; place: TextPlace }>();
  for (const { from, to, place, cells } of build.connections) {
    for (const [end, cell] of [
      [from, cells.from],
      [to, cells.to],
    ] as const) {
      const { family } = parsePin(end.pin);
      if (end.ref !== ref || !(family in schemes)) continue;
      const scheme = family as Scheme;
      if (!first.has(scheme)) first.set(scheme, { end, place: cell ?? place });
    }
  }
  if (first.size < 2 || isExplained(build)) return;
  const shown = [...first].map(([scheme, { end }]) => `${end.pin} ${schemes[scheme]}`);
  yield {
    subjects: [`part:${ref}`],
    mark: [...first.keys()].sort().join(),
    sides: [...first.values()].map(({ place }) => place),
    message: `The wiring names pins of ${ref} in ${first.size} ways: ${listed(shown)}.`,
    consequence: 'A builder cannot tell whether two names are two pins, and counts or guesses.',
    remedy: 'Name every pin as it is printed on the board; or say once which name is which.',
  };
}

function isExplained(build: Judged['build']): boolean {
  return proseOf(build).some(({ text }) =>
    /\b(?:printed|silk ?screen|label(?:s|led)?|gpio numbers?|numbers? of the chip|pin numbers? (?:are|mean|refer|follow)|pin names? (?:are|follow)|physical pins?|pin ?out)\b/i.test(
      text,
    ),
  );
}

/** 'D5 (GPIO5)' on a board whose D5 is another pin. */
function* impossible({ build }: Judged, ref: string, board: string): Iterable<FindingDraft> {
  const pairs =
    /\b(?:(?<label>D\d{1,2})\s*(?:\(|\/|=)\s*(?<pin>GPIO[ _]?\d{1,2})|(?<pin2>GPIO[ _]?\d{1,2})\s*(?:\(|\/|=)\s*(?<label2>D\d{1,2}))\b/gi;
  const sources = [
    ...proseOf(build),
    ...[...new Set(build.connections.map(({ place }) => place.file))].flatMap((file) => build.texts.get(file) ?? []),
  ];
  for (const source of new Set(sources)) {
    for (const match of source.text.matchAll(pairs)) {
      const label = match.groups?.label ?? match.groups?.label2 ?? '';
      const pin = Number((match.groups?.pin ?? match.groups?.pin2 ?? '').replace(/\D/g, ''));
      const own = isNumberedAsPrinted(board) ? null : pinNumberOn(board, label);
      if (own === null || own === pin) continue;
      yield {
        subjects: [`part:${ref}`],
        mark: match[0],
        sides: [placeOf(source, [match.index, match.index + match[0].length])],
        basis: 'read',
        message: `The text calls one pin of ${ref} ${match[0]}${match[0].includes('(') ? ')' : ''}; on such a board ${label.toUpperCase()} is GPIO${own}.`,
        consequence: 'A builder follows one of the two names, and the code the other.',
        remedy: 'Decide which of the two names is meant, and correct the other.',
      };
    }
  }
}
