import type { CodePin } from '#core/code.ts';
import { slugOf } from '#notation/names.ts';
import { comparePinsOn } from '../comparePinsOn.ts';
import { isChosenByBoard, knownWires, nameWords } from '../controllerEnds.ts';
import { defineCheck } from '../defineCheck.ts';
import { type PinPhrase, pinsInProse } from '../pinsInProse.ts';

export const pinInTextDiffers = defineCheck({
  id: 'pin-in-text-differs',
  title: 'Where no wiring is declared, the pins that the text names are those of the code.',
  weight: 'slows',
  audience: 'builder',
  why: 'A pin that was moved in the code and not in the sentence gives a build that stays dark.',
  basis: 'common practice: words beside a pin in the text, against the names of pins in the code',
  needs: { subject: ['code', 'guide'], witnesses: [] },
  *run(judged) {
    // Declared wires are held against the code pin by pin.
    if (knownWires(judged).length > 0) return;
    const { build } = judged;
    const phrases = pinsInProse(build);
    const pins = build.sources.flatMap((source) => source.pins);
    const board = [...build.parts.map(({ description }) => description), ...build.targets.map((one) => one.board)].join(
      ' ',
    );
    for (const pin of pins) {
      const words = wordsOf(pin);
      const meant = phrases.filter((phrase) => words.length > 0 && words.every((word) => holds(phrase, word)));
      const compared = meant.map(({ pin: told }) => comparePinsOn(board, told, pin.pin));
      const [first] = meant;
      if (first === undefined || compared.some((is) => is !== 'different') || isAnothers(pin, pins, first, board))
        continue;
      if (isChosenByBoard(pin, pins)) continue;
      yield {
        subjects: [`code:${pin.place.file}`],
        mark: slugOf(pin.name ?? pin.pin),
        sides: [...meant.slice(0, 3).map(({ place }) => place), pin.place],
        basis: 'read',
        message: `The text has ${words.join(' ')} at pin ${first.pin}; the code uses pin ${pin.pin}${pin.name === null ? '' : ` (${pin.name})`}.`,
        consequence: 'A builder wires as told and the code drives another pin: nothing happens, or the wrong thing.',
        remedy: 'Decide which of the two is right, and correct the other.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the same pins, in a list, a table and a sentence',
        files: {
          'README.md':
            '# Greenhouse watcher\n\n## Wiring\n\n- DHT22 `out` to GPIO 16\n- OLED SDA to GPIO 21, SCL to GPIO 22\n\n| part | ESP32 |\n| --- | --- |\n| Button | 4 |\n\n## Solder it\n\nSolder everything.\n',
          'main.ino':
            '#include <Wire.h>\n#define DHTPIN 16\n#define BUTTON_PIN 4\nvoid setup() { Wire.begin(21, 22); pinMode(DHTPIN, INPUT); pinMode(BUTTON_PIN, INPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'pins of other parts, words that warn, and two things of one kind',
        files: {
          'README.md':
            '# Greenhouse watcher\n\n## Solder it\n\nSolder the relay to pin 3 of the buffer. Do not use GPIO 12 for the relay. The first pump goes to GPIO 18 and the second pump to GPIO 19.\n',
          'main.ino':
            '#define RELAY_PIN 14\n#define PUMP_PIN 19\nvoid setup() { pinMode(RELAY_PIN, OUTPUT); pinMode(PUMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'a label that only the unknown board could translate',
        files: {
          'README.md': '# Greenhouse watcher\n\n## Solder it\n\nSolder the relay to D5.\n',
          'main.ino': '#define RELAY_PIN 14\nvoid setup() { pinMode(RELAY_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
    ],
    fails: [
      {
        title: 'the sensor has moved',
        files: {
          'README.md':
            '# Greenhouse watcher\n\n## Solder it\n\n- Solder `out` of the DHT22 to pin number 17 on the ESP32\n- Solder the rest\n',
          'main.ino': '#define DHTPIN 16\nvoid setup() { pinMode(DHTPIN, INPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'README.md', line: 5, words: 'dht' }],
      },
      {
        title: 'a row of a table, and a label of a board that is known',
        files: {
          'README.md':
            '# Greenhouse watcher\n\n## Parts\n\n- 1 × NodeMCU board with ESP8266\n- 1 × relay\n\n## Wiring\n\n| part | board |\n| --- | --- |\n| Relay | D5 |\n\n## Solder it\n\nSolder everything.\n',
          'main.ino': '#define RELAY_PIN 12\nvoid setup() { pinMode(RELAY_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'README.md', line: 12, words: 'D5' }],
      },
    ],
  },
});

/** Words that tell what a pin in code is for; DHTPIN and dht_pin are both about the DHT. */
function wordsOf({ name, uses }: CodePin): string[] {
  const words = name === null ? [] : nameWords(name).map((word) => word.replace(/(?<=\p{L}{2})pin$/u, ''));
  if (uses.includes('i2c-sda')) words.push('sda');
  if (uses.includes('i2c-scl')) words.push('scl');
  // A single letter or the name of a chip's own light says too little.
  return [...new Set(words)].filter((word) => word.length > 1 && word !== 'led' && word !== 'builtin');
}

/** DHT is meant by DHT22 too. */
function holds({ words }: PinPhrase, word: string): boolean {
  return [...words].some((one) => one === word || (one.startsWith(word) && /^\d+$/.test(one.slice(word.length))));
}

/** The phrase speaks of a pin that the code has for something else with words of the phrase. */
function isAnothers(pin: CodePin, pins: readonly CodePin[], phrase: PinPhrase, board: string): boolean {
  return pins.some(
    (other) =>
      other !== pin &&
      comparePinsOn(board, other.pin, phrase.pin) !== 'different' &&
      wordsOf(other).some((word) => holds(phrase, word)),
  );
}
