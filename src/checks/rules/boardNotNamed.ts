import type { Build } from '#core/build.ts';
import { defineCheck } from '../defineCheck.ts';
import { proseOf } from '../proseOf.ts';

export const boardNotNamed = defineCheck({
  id: 'board-not-named',
  title: 'The guide or a manifest says for which board the code is built, and how it is loaded.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'The menu of a build tool holds dozens of boards with one chip; the wrong one compiles and does not run.',
  basis: 'common practice: board, core, options and way of loading belong to the code',
  needs: { subject: ['code', 'steps'], witnesses: [] },
  *run({ build, facts }) {
    const source = build.sources.find(({ pins }) => pins.length > 0);
    if (source === undefined) return;
    const words = proseOf(build)
      .map(({ text }) => text)
      .join('\n');
    const part = build.parts.find(({ id }) => id === facts.controllers[0]?.value.part);
    const board = isBoardTold(build, words, `${part?.description ?? ''} ${part?.mpn ?? ''}`);
    const way = build.targets.length > 0 || wayWords.test(words);
    if (board && way) return;
    const what = board
      ? 'how it gets on to the board'
      : way
        ? 'which board to choose for it'
        : 'which board to choose for it, and how to load it';
    const loading = facts.actions.find(({ kind, told }) => kind === 'load-code' && told === 'do');
    yield {
      subjects: ['build:board'],
      sides: [loading?.place ?? { kind: 'file', file: source.file }],
      message: `The build has code for ${part === undefined ? 'a controller' : (part.refs[0] ?? part.description)}; neither the guide nor a manifest says ${what}.`,
      consequence: 'A builder tries one setting after the other, and cannot tell a wrong setting from a wrong wire.',
      remedy:
        'Name the board as the build tool lists it, its options where they differ from the usual, and the way of loading.',
    };
  },
  examples: {
    passes: [
      {
        title: 'a manifest says it all',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nBuild it.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'platformio.ini': '[env:lamp]\nplatform = espressif32@6.9.0\nboard = esp32dev\nframework = arduino\n',
          'src/main.cpp':
            '#include <Arduino.h>\nconst int LAMP_PIN = 18;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'the text names the board',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nChoose the board "ESP32 Dev Module" in the IDE and upload the sketch.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'main.ino': 'const int LAMP_PIN = 18;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'a board that has one entry in every menu',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload the sketch over USB.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Arduino Uno board\n',
          'main.ino': 'const int LAMP_PIN = 8;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'a chip that is its own entry in the menu, and files copied on to a part of the list',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nChoose ATtiny85 at 8 MHz. Copy `lamp.py` and the rest to U1.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Microcontroller board with ATtiny85\n',
          'main.ino': 'const int LAMP_PIN = 1;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'a program for the computer',
        files: {
          'guide.md': '# Night light\n\n## Solder the lamp\n\nSolder it. Then run the program.\n',
          'plot.py': 'import sys\n\nprint(sys.argv)\n',
        },
      },
    ],
    fails: [
      {
        title: 'code, and not a word about it',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n\n## Use it\n\nEnjoy the light.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'main.ino': 'const int LAMP_PIN = 18;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino', words: 'how to load it' }],
      },
      {
        title: 'loaded somehow, for one of many boards',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload the sketch with the IDE.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'main.ino': 'const int LAMP_PIN = 18;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'which board' }],
      },
    ],
  },
});

/** Ways to get code on to a board, as guides speak of them. */
const wayWords =
  /\b(?:ide|upload(?:s|ing)?|flash(?:ing|es)?|esptool|avrdude|mpremote|thonny|uf2|bootsel|programmer|platformio|pio run|arduino-cli|web serial|ota|copy +(?:\S+ +){1,6}(?:on ?)?to (?:the )?(?:board|drive|pico|U\d+|\S*circuitpy))\b/i;

/** Sentences that name a board's settings. */
const boardWords =
  /\bfqbn\b|\b\w+:\w+:\w+\b|\b(?:choose|select|pick|set)\b[^.\n]{0,60}\b(?:board|at(?:tiny|mega)\d+\w*)\b|\bboard\b[^.\n]{0,30}(?:"|“|‘|`|:\s*\*{0,2}\w)|\bdev(?:kit)? module\b|tools?\s*(?:>|→|▸|menu)|\b(?:micro|circuit)python\b/i;

/** Boards that stand under their own name in the menus of build tools. */
const ownName =
  /\b(?:uno|nano|mega|leonardo|pro ?micro|pro ?mini|pico|xiao|feather|metro|teensy|nodemcu|wemos|d1 mini|micro:?bit|devkit ?c|devkitm|t-display|m5\w+|heltec|blue ?pill)\b/i;

function isBoardTold(build: Build, words: string, described: string): boolean {
  return (
    build.targets.some(
      ({ board, settings }) => board !== null || settings.board !== undefined || settings.idf !== undefined,
    ) ||
    boardWords.test(words) ||
    ownName.test(described) ||
    ownName.test(words)
  );
}
