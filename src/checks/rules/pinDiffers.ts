import type { Judged } from '#core/assembled.ts';
import type { Basis } from '#core/claim.ts';
import { type Connection, connectionId, type Endpoint, endpointId } from '#core/connection.ts';
import type { DrivenPin } from '#core/facts.ts';
import type { Place } from '#core/place.ts';
import type { Join } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { comparePins, type PinComparison, parsePin } from '#notation/pins.ts';
import { compareJoin } from '#rehearsal/compareJoin.ts';
import { type Nets, netsOf } from '#rehearsal/nets.ts';
import { comparePinsOn } from '../comparePinsOn.ts';
import {
  type ControllerEnd,
  controllerEnds,
  isUncertainAnalogue,
  knownWires,
  wordsOfDriven,
} from '../controllerEnds.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const pinDiffers = defineCheck({
  id: 'pin-differs',
  title: 'Code, wiring and text agree on which pin goes where.',
  weight: 'halts',
  audience: 'builder',
  why: 'A pin that was moved in the code and not in the wiring gives a build that stays dark, or one that burns.',
  basis: 'common practice: pins are held together by the names of constants, nets and parts',
  grave: true,
  needs: { subject: ['wires'], witnesses: [] },
  rehearsal: true,
  *run(judged) {
    yield* codeAgainstWires(judged);
    yield* stepsAgainstWiring(judged);
    yield* proseAgainstWiring(judged);
    yield* proseBesideWiring(judged);
  },
  examples: {
    passes: [
      {
        title: 'code and wiring agree, each in its own way of writing',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the ring\n\n- Parts: H1, R1\n- Connects: U1.GPIO5 – R1.1, R1.2 – H1.IN\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nR1,1,Resistor 330 Ω\nH1,1,LED ring 16 pixels\n',
          'wiring.csv': 'from,to,net\nU1.IO5,R1.1,RING\nR1.2,H1.IN,RING_IN\nU1.GND,H1.GND,GND\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n\nconst int RING_PIN = 5;\n\nvoid setup() { pinMode(RING_PIN, OUTPUT); }\nvoid loop() { digitalWrite(RING_PIN, HIGH); }\n',
        },
      },
      {
        title: 'a lamp on the board itself is not the ring',
        files: {
          'guide.md': '# Night light\n\n## Wire the ring\n\n- Parts: H1\n- Connects: U1.GPIO5 – H1.IN\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\nH1,1,LED ring 16 pixels\n',
          'wiring.csv': 'from,to,net\nU1.GPIO5,H1.IN,RING\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n\nconst int RING_PIN = 5;\nconst int LED_PIN = 2;\n\nvoid setup() { pinMode(RING_PIN, OUTPUT); pinMode(LED_PIN, OUTPUT); }\nvoid loop() { digitalWrite(RING_PIN, HIGH); digitalWrite(LED_PIN, LOW); }\n',
        },
      },
      {
        title: 'words that warn, and a wiring that names the pin by another scheme',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the ring\n\n- Parts: H1\n- Connects: U1.D5 – H1.IN\n\nDo not solder a wire from U1.GPIO6 to H1.IN.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Controller board\nH1,1,LED ring 16 pixels\n',
          'wiring.csv': 'from,to,net\nU1.GPIO5,H1.IN,RING\n',
        },
      },
      {
        title: 'a label whose number only the unknown board knows settles nothing',
        files: {
          'guide.md': '# Night light\n\n## Wire the ring\n\n- Parts: H1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Controller board\nH1,1,LED ring 16 pixels\n',
          'wiring.csv': 'from,to,net\nU1.D5,H1.IN,RING\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n\nconst int RING_PIN = 14;\n\nvoid setup() { pinMode(RING_PIN, OUTPUT); }\nvoid loop() { digitalWrite(RING_PIN, HIGH); }\n',
        },
      },
    ],
    fails: [
      {
        title: 'the code drives 5, the ring hangs on 6',
        files: {
          'guide.md': '# Night light\n\n## Wire the ring\n\n- Parts: H1, R1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nR1,1,Resistor 330 Ω\nH1,1,LED ring 16 pixels\n',
          'wiring.csv': 'from,to,net\nU1.GPIO6,R1.1,RING\nR1.2,H1.IN,RING_IN\nU1.GND,H1.GND,GND\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n\nconst int RING_PIN = 5;\n\nvoid setup() { pinMode(RING_PIN, OUTPUT); }\nvoid loop() { digitalWrite(RING_PIN, HIGH); }\n',
        },
        expect: [
          { file: 'firmware/main.cpp', line: 3, words: 'RING_PIN' },
          { file: 'wiring.csv', line: 2, words: 'U1.GPIO6' },
        ],
      },
      {
        title: 'a list without references: the wiring calls the board by its word',
        files: {
          'guide.md':
            '# Keys\n\n## Parts\n\n- 1 controller board with ATmega32U4, 5 V\n- 4 key switches\n\n## Wire the keys\n\n- Connects: Board.4 – Keys.ROW1\n\nSolder.\n',
          'wiring.csv': 'from,to,net\nBoard.4,Keys.ROW1,ROW_1\nBoard.5,Keys.ROW2,ROW_2\nBoard.6,Keys.COL1,COL_1\n',
          'keys/keys.ino':
            '#define ROW_1 9\n#define ROW_2 5\n#define COL_1 6\nconst byte rows[] = {ROW_1, ROW_2};\nvoid setup() { for (byte row : rows) pinMode(row, OUTPUT); pinMode(COL_1, INPUT_PULLUP); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'keys/keys.ino', line: 1, words: 'ROW_1' }],
      },
      {
        title: 'analogue pins beside numbered ones, and the light on the board',
        files: {
          'guide.md':
            '# Keys\n\n## Parts\n\n- 1 controller board with 32 pins\n- 4 key switches\n\n## Wire the keys\n\n- Connects: Board.4 – Keys.ROW1, Board.5 – Keys.ROW2, Board.A0 – Keys.COL1\n\nSolder.\n\n## Load the code\n\n- Code: keys/keys.ino → Board\n\nUpload the sketch.\n',
          'wiring.csv': 'from,to,net\nBoard.4,Keys.ROW1,ROW_1\nBoard.5,Keys.ROW2,ROW_2\nBoard.A0,Keys.COL1,COL_1\n',
          'keys/keys.ino':
            '#define ROW_1 4\n#define ROW_2 A0\n#define COL_1 5\nconst byte pins[] = {ROW_1, ROW_2, COL_1};\nvoid setup() { for (byte pin : pins) pinMode(pin, OUTPUT); pinMode(LED_BUILTIN, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'keys/keys.ino', line: 2, words: 'ROW_2' }],
      },
      {
        title: 'the text leads a wire to a pin that no row has',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the keys\n\n- Parts: U1\n\nSolder the yellow wire to U1.IO5 and the blue one to U1.IO9. Leave U1.IO12 free. Do not solder anything to U1.IO13.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\n"S1, S2, S3",3,Push button\nH1,1,Ring\n',
          'wiring.csv': 'from,to,net\nU1.IO5,S1.1,A\nU1.IO6,S2.1,B\nU1.IO7,S3.1,C\nU1.IO8,H1.IN,D\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'U1.IO9' }],
      },
      {
        title: 'two lines of a bus are crossed',
        files: {
          'guide.md': '# Night light\n\n## Wire the display\n\n- Parts: DS1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\nDS1,1,OLED display\n',
          'wiring.csv': 'from,to,net\nU1.GPIO21,DS1.SCL,\nU1.GPIO22,DS1.SDA,\nU1.GND,DS1.GND,GND\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n#include <Wire.h>\n\nvoid setup() { Wire.begin(21, 22); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'firmware/main.cpp', line: 4 }],
      },
      {
        title: 'the prose joins another pin than the wiring',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the ring\n\n- Parts: U1, H1\n\nSolder the green wire from U1.GPIO6 to H1.IN.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\nH1,1,LED ring 16 pixels\n',
          'wiring.csv': 'from,to,net\nU1.GPIO5,H1.IN,RING\nU1.GND,H1.GND,GND\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'U1.GPIO6' }],
      },
      {
        title: 'the two channels of an encoder are crossed, behind their pull-ups',
        files: {
          'guide.md': '# Night light\n\n## Wire the knob\n\n- Parts: ENC1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nENC1,1,Rotary encoder with a switch\n"R1, R2",2,Resistor 10 kΩ\n',
          'wiring.csv':
            'from,to,net\nU1.GPIO25,ENC1.B,\nU1.GPIO26,ENC1.A,\nU1.GPIO25,R1.1,\nU1.GPIO26,R2.1,\nR1.2,U1.3V3,3V3\nR2.2,U1.3V3,3V3\nENC1.C,U1.GND,GND\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n\nconst int ENCODER_A = 25;\nconst int ENCODER_B = 26;\n\nvoid setup() { pinMode(ENCODER_A, INPUT); pinMode(ENCODER_B, INPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'firmware/main.cpp', line: 3, words: 'ENCODER_A' }],
      },
      {
        title: 'the step joins another pin than the wiring',
        files: {
          'guide.md': '# Night light\n\n## Wire the ring\n\n- Parts: U1, H1\n- Connects: U1.GPIO6 – H1.IN\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\nH1,1,LED ring 16 pixels\n',
          'wiring.csv': 'from,to,net\nU1.GPIO5,H1.IN,RING\nU1.GND,H1.GND,GND\n',
        },
        expect: [
          { file: 'guide.md', line: 6, words: 'U1.GPIO6' },
          { file: 'wiring.csv', line: 2 },
        ],
      },
    ],
  },
});

/** Pins that code drives, against the pins that wires bring to what the name in the code speaks of. */
function* codeAgainstWires(judged: Judged): Iterable<FindingDraft> {
  const { facts, build } = judged;
  const wires = knownWires(judged);
  for (const ref of new Set(facts.drivenPins.map((pin) => pin.ref))) {
    const part = build.parts.find(({ id, refs }) =>
      facts.controllers.some(({ value }) => value.ref === ref && (value.part === id || refs.includes(ref))),
    );
    const board = `${part?.description ?? ''} ${part?.mpn ?? ''}`;
    const ends = controllerEnds(judged, ref, wires);
    const pins = facts.drivenPins.filter((pin) => pin.ref === ref && !isUncertainAnalogue(pin));
    const compare = comparingOn(board, ends, netsOf(wires));
    const guessed = facts.controllers.some(({ value, basis }) => value.ref === ref && basis === 'proposed');
    const crossed = new Set<ControllerEnd>();
    for (const pin of pins) {
      const meant = endMeantBy(pin, pins, ends, compare);
      if (meant === null || crossed.has(meant)) continue;
      const own = ends.find((end) => compare(end, pin) === 'same');
      if (own !== undefined) crossed.add(own);
      const wire = meant.wires[0];
      yield {
        subjects: [`part:${ref}`],
        mark: slugOf(pin.name ?? pin.group ?? pin.pin),
        sides: [pin.place, ...placesOf(meant), ...(own === undefined ? [] : placesOf(own))],
        basis: guessed ? 'proposed' : (wire?.basis ?? 'declared'),
        message: `The code uses pin ${pin.pin} of ${ref} for ${pin.name ?? wordsOfDriven(pin).join(' ')}; ${
          wire?.basis === 'declared' && build.connections.length > 0 ? 'the wiring' : 'the text'
        } joins ${endpointId(otherEnd(meant))} to ${endpointId(meant.end)}${own === undefined ? ', and nothing to that pin' : ''}.`,
        consequence: 'A builder wires as told and the code drives another pin: nothing happens, or the wrong thing.',
        remedy: 'Decide which of the two is right, and correct the other.',
      };
    }
  }
}

type Compare = (end: ControllerEnd, pin: DrivenPin) => PinComparison;

/** Where the wiring has the pin of the code under the name that the code gives it, its other lines are other pins. */
function comparingOn(board: string, ends: readonly ControllerEnd[], nets: Nets): Compare {
  return ({ end }, { pin }) => {
    const plain = comparePinsOn(board, end.pin, pin);
    if (plain !== 'cannot-tell') return plain;
    const isElsewhere = ends.some(
      (other) =>
        comparePinsOn(board, other.end.pin, pin) === 'same' &&
        !nets.endsOn(other.end).some((one) => endpointId(one) === endpointId(end)),
    );
    return isElsewhere ? 'different' : 'cannot-tell';
  };
}

/** The one wired pin that a name in code means, where that is not the pin that the code uses; else null. */
function endMeantBy(
  pin: DrivenPin,
  pins: readonly DrivenPin[],
  ends: readonly ControllerEnd[],
  compare: Compare,
): ControllerEnd | null {
  const words = wordsOfDriven(pin);
  const means = (end: ControllerEnd, of: readonly string[]) => of.length > 0 && of.every((word) => end.words.has(word));
  const compared = ends.map((end) => ({ end, is: compare(end, pin) }));
  const meant = compared.filter(({ end }) => means(end, words));
  if (meant.some(({ is }) => is !== 'different')) return null;
  const own = compared.find(({ is }) => is === 'same')?.end;
  const free = meant.filter(({ end }) => {
    const drivers = pins.filter(
      (other) =>
        other !== pin &&
        compare(end, other) !== 'different' &&
        // The light on the board itself hangs on no wire, unless the wire is its own.
        !(isOwnLight(other) && !means(end, wordsOfDriven(other))),
    );
    // A pin that other code drives is that code's, unless the two have been swapped.
    return drivers.every((driver) => own !== undefined && means(own, wordsOfDriven(driver)));
  });
  return free.length === 1 ? (free[0]?.end ?? null) : null;
}

function isOwnLight({ pin }: DrivenPin): boolean {
  return /^(?:LED_BUILTIN|BUILTIN_LED)/u.test(pin);
}

function* stepsAgainstWiring({ build, ledger }: Judged): Iterable<FindingDraft> {
  for (const stop of ledger.stops) {
    if (stop.kind !== 'connection-not-in-wiring' || stop.nearest === null || stop.step === null) continue;
    const row = build.connections.find(({ id }) => id === stop.nearest);
    if (row === undefined) continue;
    yield {
      subjects: [`connection:${stop.join.id}`],
      sides: [...(stop.claim?.places ?? []), row.place],
      message: `The step ${stepName(build, stop.step)} joins ${pair(stop.join)}; the wiring joins ${pair(row)}.`,
      consequence: 'A builder who follows the step makes another circuit than the one that was built.',
      remedy: 'Decide which of the two is right, and correct the other.',
    };
  }
}

function* proseAgainstWiring({ build, facts }: Judged): Iterable<FindingDraft> {
  const nets = netsOf(build.connections);
  const spoken = new Map<string, { join: Pick<Join, 'from' | 'to'>; row: Connection; places: Place[]; basis: Basis }>();
  for (const { value, places, basis } of facts.pins) {
    if (value.other === null || places.some((place) => warnsAgainst(build, place))) continue;
    const join = { from: value.end, to: value.other };
    const verdict = compareJoin(join, build.connections, nets);
    if (verdict.is !== 'otherwise') continue;
    const id = connectionId(join.from, join.to);
    const entry = spoken.get(id) ?? { join, row: verdict.row, places: [], basis };
    entry.places.push(...places);
    spoken.set(id, entry);
  }
  for (const [id, { join, row, places, basis }] of spoken) {
    yield {
      subjects: [`connection:${id}`],
      mark: 'text',
      sides: [...places, row.place],
      basis,
      message: `The text speaks of ${pair(join)}; the wiring joins ${pair(row)}.`,
      consequence: 'A builder who follows the text makes another circuit than the one that was built.',
      remedy: 'Decide which of the two is right, and correct the other.',
    };
  }
}

/** Fewer wires of a part may be a table that shows only some of them. */
const wiredEnough = 3;
const joins = /\b(?:solder|push|plug|sew|connect|wire|run|lead|join|clip|crimp)(?:s|ed|ing)?\b/iu;
const noJoin =
  /\b(?:not|never|don['’]t|instead|without|wrong\w*|formerly|free|unused|empty|open|measur\w*|prob(?:e|es|ing)|reads?|or|if|other)\b/iu;

/** The text puts a wire to a pin that no wire of the table has, though the table wires other pins of that part. */
function* proseBesideWiring({ build, facts }: Judged): Iterable<FindingDraft> {
  const wired = new Map<string, Endpoint[]>();
  for (const end of build.connections.flatMap(({ from, to }) => [from, to])) {
    wired.set(end.ref.toUpperCase(), [...(wired.get(end.ref.toUpperCase()) ?? []), end]);
  }
  const told = Object.values(facts.steps).flatMap(({ connects, removes }) =>
    [...connects, ...removes].flatMap(({ value }) => ('from' in value ? [value.from, value.to] : [])),
  );
  const spoken = new Map<string, { end: Endpoint; places: Place[] }>();
  for (const { value, places, basis, confidence } of facts.pins) {
    const { end, step } = value;
    const ends = wired.get(end.ref.toUpperCase()) ?? [];
    if (step === null || basis === 'proposed' || confidence < 0.9 || !isNumbered(end)) continue;
    const others = [...ends, ...told.filter(({ ref }) => ref === end.ref)].filter(isNumbered);
    if (new Set(others.map(({ pin }) => pin.toUpperCase())).size < wiredEnough) continue;
    if (others.some(({ pin }) => comparePins(pin, end.pin) !== 'different')) continue;
    if (!places.every((place) => putsAWire(build, place))) continue;
    const entry = spoken.get(endpointId(end)) ?? { end, places: [] };
    entry.places.push(...places);
    spoken.set(endpointId(end), entry);
  }
  for (const [id, { end, places }] of spoken) {
    const near = build.connections.find(({ from, to }) => [from, to].some(({ ref }) => ref === end.ref));
    yield {
      subjects: [`part:${end.ref}`],
      mark: slugOf(`text ${id}`),
      sides: [...places, ...(near === undefined ? [] : [near.place])],
      basis: 'read',
      message: `The text leads a wire to ${id}; no wire of the wiring ends there.`,
      consequence: 'A builder who follows the text makes another circuit than the one that was built.',
      remedy: 'Correct the pin in the text, or add the wire to the wiring.',
    };
  }
}

/** Numbers tell pins apart; a name may be one of several of a pin. */
function isNumbered({ pin }: Endpoint): boolean {
  return !['power', 'named'].includes(parsePin(pin).family);
}

/** The sentence tells to put something to the pin, and nothing else. */
function putsAWire(build: Judged['build'], place: Place): boolean {
  const source = place.kind === 'text' ? build.texts.get(place.file) : undefined;
  if (place.kind !== 'text' || source === undefined) return false;
  const { text } = source;
  const line = text.slice(text.lastIndexOf('\n', place.span[0]) + 1, place.span[0]);
  const before = line.split(/[.!?;] /u).at(-1) ?? '';
  const after = text.slice(place.span[1]).split(/\n|[.!?;](?:\s|$)/u)[0] ?? '';
  const sentence = `${before}${place.quote}${after}`;
  return joins.test(before) && !noJoin.test(sentence);
}

/** 'Do not join IN to 5V' is no statement of what is joined. */
function warnsAgainst({ texts }: Judged['build'], place: Place): boolean {
  const source = place.kind === 'text' ? texts.get(place.file) : undefined;
  if (place.kind !== 'text' || source === undefined) return false;
  const before =
    source.text
      .slice(0, place.span[0])
      .split(/[.!?\n]/)
      .at(-1) ?? '';
  return /\b(?:not|never|don['’]t|instead of|rather than|without|wrong(?:ly)?|used to|formerly)\b/i.test(
    `${before} ${place.quote}`,
  );
}

function placesOf({ wires }: ControllerEnd): Place[] {
  return wires.flatMap(({ place }) => place ?? []);
}

/** What the pin is joined to, first of all. */
function otherEnd({ end, wires }: ControllerEnd): Endpoint {
  const wire = wires[0];
  if (wire === undefined) return end;
  return endpointId(wire.from) === endpointId(end) ? wire.to : wire.from;
}

function pair({ from, to }: { from: Endpoint; to: Endpoint }): string {
  return `${endpointId(from)} – ${endpointId(to)}`;
}
