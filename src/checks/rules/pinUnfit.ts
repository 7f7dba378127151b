import type { Judged } from '#core/assembled.ts';
import type { DrivenPin } from '#core/facts.ts';
import type { Part, PartId } from '#core/part.ts';
import { comparePins, parsePin } from '#notation/pins.ts';
import { refClass } from '#notation/refs.ts';
import { netsOf } from '#rehearsal/nets.ts';
import { comparePinsOn } from '../comparePinsOn.ts';
import { isChosenByBoard, isUncertainAnalogue, knownWires } from '../controllerEnds.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { isThere, jobsAgainst, type PinJob, pinFamilyOf, pinKey } from '../pinFacts.ts';
import { listed } from '../say.ts';

export const pinUnfit = defineCheck({
  id: 'pin-unfit',
  title: 'Each pin of the controller can do what the code asks of it.',
  weight: 'halts',
  audience: 'builder',
  why: 'Pins that can only be inputs, carry the flash memory or decide how the chip starts look like all others.',
  basis: 'documentation of the chips and their cores, named for each family in the table of pin facts',
  needs: { subject: ['code'], witnesses: [] },
  *run(judged) {
    if (!isCertain(judged)) yield { cannotTell: 'it is not said which board runs which code' };
    else for (const board of boardsOf(judged)) yield* onBoard(judged, board);
  },
  examples: {
    passes: [
      {
        title: 'outputs on free pins, a reading on a pin that can only be read, and a pull-up outside',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nSW1,1,Button\nR1,1,Resistor 10 kΩ\n',
          'wiring.csv':
            'from,to,net\nU1.GPIO35,SW1.1,BUTTON\nU1.GPIO35,R1.1,BUTTON\nR1.2,U1.3V3,3V3\nSW1.2,U1.GND,GND\n',
          'main.ino':
            '#include <WiFi.h>\nconst int LAMP_PIN = 18;\nconst int LIGHT_PIN = 34;\nconst int BUTTON_PIN = 35;\nvoid setup() { Serial.begin(115200); pinMode(LAMP_PIN, OUTPUT); pinMode(BUTTON_PIN, INPUT_PULLUP); }\nvoid loop() { digitalWrite(LAMP_PIN, analogRead(LIGHT_PIN) > 100); }\n',
        },
      },
      {
        title: 'another chip of the same name has other pins',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32-S3 development board\n',
          'main.ino':
            'const int LAMP_PIN = 38;\nconst int RELAY_PIN = 48;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); pinMode(RELAY_PIN, OUTPUT); }\nvoid loop() { digitalWrite(LAMP_PIN, HIGH); }\n',
        },
      },
      {
        title: 'the description leaves the chip open, and the manifest names another',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'platformio.ini':
            '[env:lamp]\nplatform = espressif32@6.9.0\nboard = esp32-s3-devkitc-1\nframework = arduino\n',
          'src/main.cpp':
            '#include <Arduino.h>\nconst int LAMP_PIN = 38;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() { digitalWrite(LAMP_PIN, HIGH); }\n',
        },
      },
      {
        title: 'pins chosen for one of two boards',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP8266 board (NodeMCU form)\n',
          'main.ino':
            '#ifdef ESP32\n#define BUZZER 25\n#else\n#define BUZZER D1\n#endif\nvoid setup() { pinMode(BUZZER, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'two boards, two programs, and nobody says which runs which',
        outcome: 'cannot-tell',
        files: {
          'guide.md': '# Doorbell\n\n## Wire it\n\n- Parts: U1, U2\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Arduino Nano board\nU2,1,ESP8266 board (NodeMCU form)\n',
          'wiring.csv': 'from,to,net\nU2.D8,H1.1,BELL\nU2.D3,H1.2,LAMP\n',
          'sender/sender.ino': 'const int LAMP_PIN = 9;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
          'receiver/receiver.ino':
            'const int BELL_PIN = D8;\nconst int LAMP_PIN = D3;\nvoid setup() { pinMode(BELL_PIN, OUTPUT); pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'the light of the board as output, and the analogue pins of a larger board',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Arduino Mega 2560 board\n',
          'main.ino':
            'const int LAMP_PIN = 13;\nconst int BUTTON_PIN = A6;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); pinMode(BUTTON_PIN, INPUT_PULLUP); }\nvoid loop() { digitalWrite(LAMP_PIN, digitalRead(BUTTON_PIN)); }\n',
        },
      },
    ],
    fails: [
      {
        title: 'a lamp on a pin that can only be read, a relay on the flash memory',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'main.ino':
            'const int LAMP_PIN = 34;\nconst int RELAY_PIN = 9;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); pinMode(RELAY_PIN, OUTPUT); }\nvoid loop() { digitalWrite(LAMP_PIN, HIGH); digitalWrite(RELAY_PIN, LOW); }\n',
        },
        expect: [
          { file: 'main.ino', line: 1, words: 'LAMP_PIN' },
          { file: 'main.ino', line: 2, words: 'flash memory' },
        ],
      },
      {
        title: 'a button without a pull-up, an analogue input that Wi-Fi takes, and a pin that does not exist',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32-WROOM-32 board\nSW1,1,Button\n',
          'wiring.csv': 'from,to,net\nU1.GPIO35,SW1.1,BUTTON\nSW1.2,U1.GND,GND\n',
          'main.ino':
            '#include <WiFi.h>\nconst int BUTTON_PIN = 35;\nconst int LIGHT_PIN = 25;\nconst int RELAY_PIN = 24;\nvoid setup() { pinMode(BUTTON_PIN, INPUT_PULLUP); pinMode(RELAY_PIN, OUTPUT); }\nvoid loop() { digitalWrite(RELAY_PIN, analogRead(LIGHT_PIN) > 100); }\n',
        },
        expect: [
          { file: 'main.ino', line: 2, words: 'no pull-up' },
          { file: 'main.ino', line: 3, words: 'Wi-Fi' },
          { file: 'main.ino', line: 4, words: 'no such pin' },
        ],
      },
      {
        title: 'digital work on pins that are analogue only, and a lamp on the serial line',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Arduino Nano board with ATmega328P\n',
          'main.ino':
            'const int BUTTON_PIN = A7;\nconst int LAMP_PIN = 1;\nvoid setup() { Serial.begin(9600); pinMode(BUTTON_PIN, INPUT); pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() { digitalWrite(LAMP_PIN, digitalRead(BUTTON_PIN)); }\n',
        },
        expect: [
          { file: 'main.ino', line: 1, words: 'analogue input' },
          { file: 'main.ino', line: 2, words: 'serial line' },
        ],
      },
      {
        title: 'a list without references',
        files: {
          'README.md':
            '# Night light\n\n## Parts\n\n- 1 × ESP32 development board\n- 1 × white LED\n\n## Solder it\n\nSolder.\n',
          'main.ino': 'const int LAMP_PIN = 36;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino', line: 1, words: 'the board' }],
      },
      {
        title: 'a label that stands for the pin without interrupts',
        files: {
          'guide.md': '# Night light\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP8266 board (NodeMCU form)\n',
          'main.ino':
            'const int KNOB_PIN = D0;\nvoid onTurn() {}\nvoid setup() { pinMode(KNOB_PIN, INPUT); attachInterrupt(digitalPinToInterrupt(KNOB_PIN), onTurn, CHANGE); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino', line: 1, words: 'interrupts' }],
      },
    ],
  },
});

/** A board with the pins that code uses on it. */
interface Board {
  readonly name: string;
  readonly part: PartId;
  readonly description: string;
  readonly pins: readonly DrivenPin[];
}

/** Whether each program has its board: by a step that loads it, or because there is one of each. */
function isCertain({ build, facts }: Judged): boolean {
  const programs = build.sources.filter(({ file }) => /\bvoid\s+setup\s*\(/.test(build.texts.get(file)?.text ?? ''));
  return facts.controllers.every(
    ({ basis, confidence }) => basis === 'declared' || (confidence >= 0.8 && programs.length <= 1),
  );
}

/** The controllers of the build; where parts have no references, the one part that is described as a known chip. */
function boardsOf({ build, facts }: Judged): Board[] {
  const targets = build.targets.flatMap(({ board }) => board ?? []);
  const describe = (part: Part) => [part.description, part.mpn, ...targets].filter(Boolean).join(' ');
  const named = facts.controllers.flatMap(({ value: { ref, part: id } }) => {
    const part = build.parts.find((one) => one.id === id);
    const pins = facts.drivenPins.filter((pin) => pin.ref === ref);
    return part === undefined ? [] : [{ name: ref, part: id, description: describe(part), pins }];
  });
  if (named.length > 0) return named;
  const known = build.parts.filter((part) => part.fitted && pinFamilyOf(part.description) !== null);
  const [only] = known;
  if (only === undefined || known.length > 1 || only.refs.length > 0) return [];
  const pins = build.sources.flatMap((source) => source.pins.map((pin) => ({ ...pin, ref: only.id })));
  return [{ name: 'the board', part: only.id, description: describe(only), pins }];
}

function* onBoard(judged: Judged, { name, part, description: board, pins: all }: Board): Iterable<FindingDraft> {
  const family = pinFamilyOf(board);
  if (family === null) return;
  const pins = all.filter((pin) => !isUncertainAnalogue(pin) && !isChosenByBoard(pin, all));
  const byJob = new Map<PinJob | null, DrivenPin[]>();
  for (const pin of pins) {
    const key = pinKey(board, pin.pin);
    if (key === null) continue;
    const there = isThere(family, key) || pin.uses.every((use) => use === 'named');
    const jobs = there ? jobsAgainst(family, board, key, pin.uses) : [null];
    for (const job of jobs) {
      if (job !== null && !applies(judged, job, pin, board)) continue;
      byJob.set(job, [...(byJob.get(job) ?? []), pin]);
    }
  }
  for (const [job, found] of byJob) yield { subjects: [`part:${part}`], ...finding(name, family.name, job, found) };
}

function finding(
  board: string,
  family: string,
  job: PinJob | null,
  pins: readonly DrivenPin[],
): Omit<FindingDraft, 'subjects'> {
  const named = listed(pins.map(({ pin, name }) => (name === null ? `pin ${pin}` : `pin ${pin} for ${name}`)));
  const numbers = listed([...new Set(pins.map(({ pin }) => pin))]);
  const many = new Set(pins.map(({ pin }) => pin)).size > 1;
  return {
    mark: `${job?.says ?? 'not there'} ${numbers}`,
    sides: pins.slice(0, 5).flatMap(({ place, usedAt }) => [place, ...usedAt.slice(0, 1)]),
    weight: job?.weight ?? 'halts',
    message:
      job === null
        ? `The code uses ${named} of ${board}; an ${family} has no such pin.`
        : `The code uses ${named} of ${board}. On an ${family} ${many ? 'each of them' : 'this pin'} ${job.says}.`,
    consequence: job?.then ?? 'The code does not compile for this board, or drives nothing.',
    remedy: 'Move it to a free pin, in the code and in the wiring.',
  };
}

/** Whether the circumstances hold under which a use does not go with the pin's job. */
function applies(judged: Judged, job: PinJob, pin: DrivenPin, board: string): boolean {
  if (job.unlessNamed !== undefined && new RegExp(job.unlessNamed, 'i').test(pin.name ?? '')) return false;
  if (job.unlessTold !== undefined && guideSays(judged, new RegExp(job.unlessTold, 'i'))) return false;
  switch (job.when) {
    case 'wifi':
      return judged.build.sources.some(({ includes }) =>
        includes.some(({ written }) => /^(?:WiFi\w*|ESP8266WiFi|esp_wifi|network)(?:\.h)?$/i.test(written)),
      );
    case 'serial':
      return codeOf(judged, pin).some((text) => /\bSerial\.(?:begin|print)/.test(text));
    case 'pull-up':
      // Where no wire of the pin is known, a resistor may well be there.
      return asksForPullUp(judged, pin) && isPulledUp(judged, pin, board) === false;
    case 'pulled-up':
      return isPulledUp(judged, pin, board) === true;
    default:
      return true;
  }
}

function guideSays({ build }: Judged, pattern: RegExp): boolean {
  return build.instructions.sections.some(({ file }) => pattern.test(build.texts.get(file)?.text ?? ''));
}

function codeOf({ build, facts }: Judged, { ref }: DrivenPin): string[] {
  const own = facts.controllers.filter(({ value }) => value.ref === ref).flatMap(({ value }) => value.files);
  const files = own.length > 0 ? own : build.sources.map(({ file }) => file);
  return files.flatMap((file) => build.texts.get(file)?.text ?? []);
}

function asksForPullUp({ build }: Judged, { usedAt }: DrivenPin): boolean {
  return usedAt.some(({ file, line, quote }) => {
    const whole = build.texts.get(file)?.text.split(/\r\n|\r|\n/)[line - 1] ?? '';
    const call = whole.includes(quote) && quote.includes('(') ? quote : whole;
    return /PULL_?UP|Pull\.UP/.test(call);
  });
}

/** Whether a resistor leads from the pin's net to a supply; null where no wire of the pin is known. */
function isPulledUp(judged: Judged, pin: DrivenPin, board: string): boolean | null {
  const wires = knownWires(judged);
  const nets = netsOf(wires);
  const ends = wires.flatMap(({ from, to }) => [from, to]);
  const own = ends.filter((end) => end.ref === pin.ref && comparePinsOn(board, end.pin, pin.pin) === 'same');
  if (own.length === 0) return null;
  return own
    .flatMap((end) => nets.endsOn(end))
    .filter(({ ref }) => refClass(ref) === 'resistor')
    .flatMap((leg) => ends.filter(({ ref, pin: other }) => ref === leg.ref && other !== leg.pin))
    .flatMap((far) => nets.endsOn(far))
    .some(({ pin: name }) => parsePin(name).family === 'power' && comparePins(name, 'GND') === 'different');
}
