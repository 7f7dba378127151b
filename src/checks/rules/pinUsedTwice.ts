import type { Judged } from '#core/assembled.ts';
import type { PinUse } from '#core/code.ts';
import { type Connection, endpointId } from '#core/connection.ts';
import type { DrivenPin } from '#core/facts.ts';
import type { Path, Place } from '#core/place.ts';
import { parsePin } from '#notation/pins.ts';
import { comparePinsOn } from '../comparePinsOn.ts';
import { isChosenByBoard, isUncertainAnalogue, nameWords } from '../controllerEnds.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { listed } from '../say.ts';

export const pinUsedTwice = defineCheck({
  id: 'pin-used-twice',
  title: 'One pin of the controller serves one purpose.',
  weight: 'halts',
  audience: 'builder',
  why: 'Two things on one pin work one at a time at best; at worst two outputs fight and one burns.',
  basis: 'common practice; supplies and bus lines are shared rightly',
  grave: true,
  needs: { subject: ['code or wiring'], witnesses: [] },
  *run(judged) {
    yield* inWiring(judged);
    yield* inCode(judged);
  },
  examples: {
    passes: [
      {
        title: 'supplies and bus lines are shared, and a pull-up hangs on a line of its own net',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nDS1,1,OLED display\nU2,1,Light sensor\nR1,1,Resistor 10 kΩ\nSW1,1,Button\n',
          'wiring.csv':
            'from,to,net\nU1.GPIO21,DS1.SDA,SDA\nU1.GPIO21,U2.SDA,SENSOR_SDA\nU1.GND,DS1.GND,GND\nU1.GND,U2.GND,0V\nU1.GPIO4,SW1.1,BUTTON\nU1.GPIO4,R1.1,\n',
        },
      },
      {
        title: 'a second name for the same thing, and pins chosen by board',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\nSW1,1,Button\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n\n#ifdef SMALL_BOARD\n#define BUTTON_PIN 4\n#define RELAY_PIN 5\n#else\n#define BUTTON_PIN 5\n#define RELAY_PIN 4\n#endif\n#define RING_PIN 12\n#define RING_DATA RING_PIN\n\nvoid setup() { pinMode(BUTTON_PIN, INPUT); pinMode(RELAY_PIN, OUTPUT); pinMode(RING_PIN, OUTPUT); digitalWrite(RING_DATA, LOW); }\nvoid loop() {}\n',
        },
      },
    ],
    fails: [
      {
        title: 'button and ring on one pin of the wiring',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nH1,1,LED ring 16 pixels\nSW1,1,Button\n',
          'wiring.csv': 'from,to,net\nU1.GPIO5,H1.IN,RING\nU1.GPIO5,SW1.1,BUTTON\nU1.GND,H1.GND,GND\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n\nconst int RING_PIN = 5;\n\nvoid setup() { pinMode(RING_PIN, OUTPUT); }\nvoid loop() { digitalWrite(RING_PIN, HIGH); }\n',
        },
        expect: [
          { file: 'wiring.csv', line: 2, words: 'RING' },
          { file: 'wiring.csv', line: 3, words: 'BUTTON' },
        ],
      },
      {
        title: 'the code reads a button on the pin that drives the relay',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\nSW1,1,Button\n',
          'firmware/main.cpp':
            '#include <Arduino.h>\n\nconst int BUTTON_PIN = 4;\nconst int RELAY_PIN = 4;\n\nvoid setup() { pinMode(BUTTON_PIN, INPUT); pinMode(RELAY_PIN, OUTPUT); }\nvoid loop() { digitalWrite(RELAY_PIN, digitalRead(BUTTON_PIN)); }\n',
        },
        expect: [
          { file: 'firmware/main.cpp', line: 3, words: 'BUTTON_PIN' },
          { file: 'firmware/main.cpp', line: 4, words: 'RELAY_PIN' },
        ],
      },
    ],
  },
});

/** A signal pin of a controller that rows of differently named nets begin at. */
function* inWiring({ build, facts }: Judged): Iterable<FindingDraft> {
  const boards = new Set(facts.controllers.map(({ value }) => value.ref));
  const rows = new Map<string, { row: Connection; net: string }[]>();
  for (const row of build.connections) {
    for (const end of [row.from, row.to]) {
      if (!boards.has(end.ref) || row.net === null || isSupply(end.pin) || isSupply(row.net)) continue;
      rows.set(endpointId(end), [...(rows.get(endpointId(end)) ?? []), { row, net: row.net }]);
    }
  }
  for (const [pin, here] of rows) {
    const [first, ...others] = here;
    const strangers = first === undefined ? [] : others.filter(({ net }) => !mayBeOneLine(net, first.net));
    if (first === undefined || strangers.length === 0) continue;
    const all = [first, ...strangers];
    yield {
      subjects: [`part:${pin.slice(0, pin.indexOf('.'))}`],
      mark: pin,
      sides: all.map(({ row }) => row.place),
      message: `The wiring has ${pin} on ${listed([...new Set(all.map(({ net }) => net))])}.`,
      consequence: 'A builder joins two lines that must stay apart.',
      remedy: 'Move one of them to a free pin, in the wiring and in the code; or give both rows one net name.',
    };
  }
}

function* inCode({ build, facts }: Judged): Iterable<FindingDraft> {
  for (let at = 0; at < facts.drivenPins.length; at++) {
    const pin = facts.drivenPins[at];
    if (pin === undefined || isChosenByBoard(pin, facts.drivenPins)) continue;
    const other = facts.drivenPins
      .slice(at + 1)
      .find((one) => clash(build, pin, one) && !isChosenByBoard(one, facts.drivenPins));
    if (other === undefined) continue;
    const exclude = areExclusive(pin.uses, other.uses);
    if (!exclude && (pin.name === null || other.name === null)) continue;
    yield {
      subjects: [`part:${pin.ref}`],
      mark: `${pin.pin}-in-code`,
      sides: [pin.place, other.place, ...firstUse(pin), ...firstUse(other)],
      weight: exclude ? 'halts' : 'slows',
      message: `The code uses pin ${pin.pin} of ${pin.ref} for ${called(pin)} and for ${called(other)}.`,
      consequence: exclude
        ? 'A builder wires two things to one pin, and one of them cannot work.'
        : 'A builder cannot tell which of the two is joined to that pin.',
      remedy: 'Give one of them a pin of its own, in the code and in the wiring.',
    };
  }
}

function clash(build: Judged['build'], a: DrivenPin, b: DrivenPin): boolean {
  const part = build.parts.find(({ refs }) => refs.includes(a.ref));
  return (
    a.ref === b.ref &&
    isUncertainAnalogue(a) === isUncertainAnalogue(b) &&
    folderOf(a.place.file) === folderOf(b.place.file) &&
    comparePinsOn(part?.description ?? '', a.pin, b.pin) === 'same' &&
    (a.name === null || b.name === null ? a.name !== b.name : !mayBeOneLine(a.name, b.name) && a.name !== b.name)
  );
}

type Direction = 'in' | 'out' | 'i2c' | 'uart' | 'spi' | 'either';

const directions: Readonly<Record<PinUse, Direction>> = {
  output: 'out',
  pwm: 'out',
  'led-strip': 'out',
  servo: 'out',
  input: 'in',
  'analogue-in': 'in',
  interrupt: 'in',
  encoder: 'in',
  'i2c-sda': 'i2c',
  'i2c-scl': 'i2c',
  uart: 'uart',
  spi: 'spi',
  other: 'either',
  named: 'either',
};

/** Uses that no pin can serve at once. A pin that turns round (a one-wire sensor) is in both sets; a bus selects by an output. */
function areExclusive(a: readonly PinUse[], b: readonly PinUse[]): boolean {
  const [first, second] = [a, b].map(
    (uses) => new Set(uses.map((use) => directions[use]).filter((one) => one !== 'either')),
  );
  if (first === undefined || second === undefined || first.size === 0 || second.size === 0) return false;
  const meet = [...first].some((one) => second.has(one));
  const selects = (one: Set<Direction>, other: Set<Direction>) => one.has('spi') && other.has('out');
  return !meet && !selects(first, second) && !selects(second, first);
}

function isSupply(name: string): boolean {
  return parsePin(name).family === 'power';
}

/** Whether two names can mean one line: the words of one are all in the other, as in SDA and SENSOR_SDA. */
function mayBeOneLine(a: string, b: string): boolean {
  const [few = [], many = []] = [nameWords(a), nameWords(b)].sort((x, y) => x.length - y.length);
  return few.length > 0 && few.every((word) => many.includes(word));
}

function called(pin: DrivenPin): string {
  const [use = 'other'] = pin.uses;
  return pin.name ?? `an unnamed ${use}`;
}

function firstUse(pin: DrivenPin): Place[] {
  return pin.usedAt.slice(0, 1);
}

function folderOf(file: Path): Path {
  return file.slice(0, file.lastIndexOf('/') + 1);
}
