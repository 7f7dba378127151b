import type { Judged } from '#core/assembled.ts';
import type { Basis } from '#core/claim.ts';
import { type Connection, connectionId, type Endpoint, endpointId } from '#core/connection.ts';
import type { DrivenPin } from '#core/facts.ts';
import type { Place } from '#core/place.ts';
import type { Join } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { compareJoin } from '#rehearsal/compareJoin.ts';
import { netsOf } from '#rehearsal/nets.ts';
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
    const part = build.parts.find(({ refs }) => refs.includes(ref));
    const board = `${part?.description ?? ''} ${part?.mpn ?? ''}`;
    const ends = controllerEnds(judged, ref, wires);
    const pins = facts.drivenPins.filter((pin) => pin.ref === ref && !isUncertainAnalogue(pin));
    const guessed = facts.controllers.some(({ value, basis }) => value.ref === ref && basis === 'proposed');
    const crossed = new Set<ControllerEnd>();
    for (const pin of pins) {
      const meant = endMeantBy(pin, pins, ends, board);
      if (meant === null || crossed.has(meant)) continue;
      const own = ends.find(({ end }) => comparePinsOn(board, end.pin, pin.pin) === 'same');
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

/** The one wired pin that a name in code means, where that is not the pin that the code uses; else null. */
function endMeantBy(
  pin: DrivenPin,
  pins: readonly DrivenPin[],
  ends: readonly ControllerEnd[],
  board: string,
): ControllerEnd | null {
  const words = wordsOfDriven(pin);
  const means = (end: ControllerEnd, of: readonly string[]) => of.length > 0 && of.every((word) => end.words.has(word));
  const compared = ends.map((end) => ({ end, is: comparePinsOn(board, end.end.pin, pin.pin) }));
  const meant = compared.filter(({ end }) => means(end, words));
  if (meant.some(({ is }) => is !== 'different')) return null;
  const own = compared.find(({ is }) => is === 'same')?.end;
  const free = meant.filter(({ end }) => {
    const drivers = pins.filter(
      (other) => other !== pin && comparePinsOn(board, end.end.pin, other.pin) !== 'different',
    );
    // A pin that other code drives is that code's, unless the two have been swapped.
    return drivers.every((driver) => own !== undefined && means(own, wordsOfDriven(driver)));
  });
  return free.length === 1 ? (free[0]?.end ?? null) : null;
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
