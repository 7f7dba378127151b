import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import { firstValue } from '#core/claim.ts';
import type { CodeConstant } from '#core/code.ts';
import type { Part } from '#core/part.ts';
import type { Place, TextPlace } from '#core/place.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import { nameWords } from '../controllerEnds.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { lineOfSetting } from '../lineOfSetting.ts';
import { proseOf } from '../proseOf.ts';
import { isRealPart } from '../realParts.ts';

export const numberDiffersFromCode = defineCheck({
  id: 'number-differs-from-code',
  title: 'Counts of lights and of keys, the speed of the serial line and the size of the display agree with the code.',
  weight: 'slows',
  audience: 'builder',
  why: 'A constant of the last lamp leaves a third of the ring dark, or fills the monitor with rubbish.',
  basis: 'common practice: constants of the code against parts list, manifest and text',
  needs: { subject: ['code'], witnesses: [] },
  *run(judged) {
    yield* lights(judged);
    yield* things(judged.build);
    yield* serialSpeed(judged.build);
    yield* displaySize(judged.build);
  },
  examples: {
    passes: [
      {
        title: 'the same count, a speed for uploading, and the display on its side',
        files: {
          'guide.md':
            '# Night light\n\nIts ring of 24 lights glows.\n\n## Load the code\n\nUpload at 460800 baud. Open the monitor at 115,200 baud.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nLED1,1,"Ring of 24 addressable LEDs WS2812B, 86 mm"\nDS1,1,OLED display 64 × 128\n',
          'main.ino':
            '#include <FastLED.h>\n#define NUM_LEDS 24\n#define SCREEN_WIDTH 128\n#define SCREEN_HEIGHT 64\nCRGB leds[NUM_LEDS];\nvoid setup() { Serial.begin(115200); FastLED.addLeds<WS2812B, 5, GRB>(leds, NUM_LEDS); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'two strips, single lights counted by pieces, a strip by the metre',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nLED1-LED8,8,"Addressable LED WS2812B, 8 mm"\nLS1,0.5 m,"LED strip WS2812B, 60 LEDs/m"\n',
          'main.ino':
            '#include <FastLED.h>\n#define NUM_LEDS 8\n#define STRIP_LEDS_COUNT 30\nCRGB leds[NUM_LEDS];\nvoid setup() { FastLED.addLeds<WS2812B, 5, GRB>(leds, NUM_LEDS); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'another serial line has a speed of its own',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nThe receiver talks at 9600 baud. The monitor shows 115200 baud.\n',
          'main.ino': 'void setup() { Serial.begin(115200); Serial1.begin(9600); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'a key that the code does not count, as the text tells, and a number that is no count',
        files: {
          'guide.md':
            '# Keypad\n\nFour keys type, the fifth resets it: five keys in all.\n\n## Load the code\n\nUpload it.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Controller board\nS1-S5,5,Key switch\nM1-M3,3,Servo\n',
          'main.ino': '#define KEYS 4\n#define SERVOS 7\nbool down[KEYS];\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
    ],
    fails: [
      {
        title: 'fewer keys in the code than list and text have',
        files: {
          'guide.md': '# Keypad\n\nSix keys under your left hand.\n\n## Load the code\n\nUpload it.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Controller board\nS1-S6,6,"Key switch, with cap"\n',
          'main.ino': '#define NUM_KEYS 4\nbool down[NUM_KEYS];\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino', line: 1, words: 'Six keys' }],
      },
      {
        title: 'a ring of 24 of which the code knows 16',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nLED1,1,Ring of 24 addressable RGB LEDs WS2812B\n',
          'main.ino':
            '#include <FastLED.h>\n#define NUM_LEDS 16\nCRGB leds[NUM_LEDS];\nvoid setup() { FastLED.addLeds<WS2812B, 5, GRB>(leds, NUM_LEDS); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino', line: 2, words: '24' }],
      },
      {
        title: 'a speed in the text that the code does not know',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nOpen the serial monitor at 9600 baud.\n',
          'main.ino': 'const long SPEED = 115200;\nvoid setup() { Serial.begin(SPEED); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '9600' }],
      },
      {
        title: 'a display of another height, and a monitor of another speed',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nDS1,1,"OLED display 0.96 in, 128×64"\n',
          'platformio.ini': '[env:lamp]\nplatform = espressif32@6.9.0\nboard = esp32dev\nmonitor_speed = 9600\n',
          'src/main.cpp':
            '#include <Arduino.h>\n#define SCREEN_WIDTH 128\n#define SCREEN_HEIGHT 32\nvoid setup() { Serial.begin(115200); }\nvoid loop() {}\n',
        },
        expect: [
          { file: 'src/main.cpp', line: 3, words: '128 × 32' },
          { file: 'platformio.ini', line: 4, words: '9600' },
        ],
      },
    ],
  },
});

const lightWords = [
  'led',
  'leds',
  'pixel',
  'pixels',
  'light',
  'lights',
  'numpixels',
  'numleds',
  'neopixel',
  'neopixels',
];

/** How many lights the code counts, against the one part or phrase that says how many there are. */
function* lights({ build }: Judged): Iterable<FindingDraft> {
  const counted = build.sources.flatMap(({ constants }) => constants.filter((one) => isLightCount(build, one)));
  const [first] = counted;
  // Several counts are several strips; which is which, names do not tell.
  if (first === undefined || counted.some(({ value }) => Number(value) !== Number(first.value))) return;
  const n = Number(first.value);
  const parts = build.parts.filter((part) => part.fitted && isRealPart(part) && isAddressable(part));
  const [part] = parts;
  const listed = part === undefined || parts.length > 1 ? [] : countsOf(part);
  if (part !== undefined && listed.length > 0 && !listed.includes(n)) {
    yield differs(
      first,
      part.place,
      `the parts list has ${part.refs[0] ?? part.description} with ${listed.at(-1)}`,
      'lights',
    );
    return;
  }
  for (const { place, count } of lightsInText(build)) {
    if (count !== n) yield differs(first, place, `the text speaks of ${count}`, 'lights');
  }
}

function isLightCount({ texts }: Build, { kind, name, value, place }: CodeConstant): boolean {
  if (kind !== 'count' || !/^\d+$/.test(value)) return false;
  if (name !== null) return nameWords(name).some((word) => lightWords.includes(word));
  const line = texts.get(place.file)?.text.split(/\r\n|\r|\n/)[place.line - 1] ?? '';
  return /neopixel|addLeds/i.test(line);
}

function isAddressable({ description, mpn }: Part): boolean {
  return /ws28\d\d|sk6812|apa102|neopixel|addressable/i.test(`${description} ${mpn ?? ''}`);
}

const counts =
  /(?<![\p{L}\d.,])(\d{1,3})\s*(?:[x×-]\s*)?(?:(?:addressable|individually|rgbw?|smart|ws28\w+|sk68\w+|apa102)\s+)*(?:leds?|pixels?|lights|neopixels?)\b/iu;
const holders = /\b(?:ring|strip|stick|string|chain|bar) (?:of|with) (\d{1,3})\b/i;

/** The counts that a row can mean: those of one piece, and of all pieces together. Empty where it does not say. */
function countsOf(part: Part): number[] {
  const text = part.description;
  const amount = firstValue(part.amount);
  if (/\/\s?m\b|per met/i.test(text) || amount === undefined || amount.unit !== 'pcs') return [];
  const grid = /(\d{1,3})\s*[x×]\s*(\d{1,3})(?!\s*mm)/iu.exec(text);
  if (/matrix|panel/i.test(text)) return grid === null ? [] : [Number(grid[1]) * Number(grid[2])];
  const found = holders.exec(text) ?? counts.exec(text);
  if (found === null) {
    const isSingle = !/ring|strip|stick|string|chain|bar\b|tape/i.test(text);
    return isSingle && amount.n > 1 ? [amount.n] : [];
  }
  return [...new Set([Number(found[1]) * amount.n, Number(found[1])])];
}

function lightsInText(build: Build): { place: TextPlace; count: number }[] {
  const pattern = /\b(?:ring|strip|string|chain) of (\d{1,3}) (?:[\p{L}-]+ ){0,2}?(?:lights|leds|pixels)\b/giu;
  return guideTexts(build).flatMap((source) =>
    [...source.text.matchAll(pattern)].map((match) => ({
      place: placeOf(source, [match.index, match.index + match[0].length]),
      count: Number(match[1]),
    })),
  );
}

/** Things of which a program keeps an array, by the words that lists and texts use for them. */
const countable: readonly (readonly string[])[] = [
  ['key', 'button', 'switch', 'pushbutton'],
  ['servo'],
  ['motor'],
  ['relay'],
  ['sensor'],
];
const countedName =
  /^(?:NUM(?:BER)?_?(?:OF_?)?|N_)?(KEY|BUTTON|SWITCHE?|SERVO|MOTOR|RELAY|SENSOR)S?(?:_?(?:COUNT|NUM))?$/i;
const spelled = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/**
 * How many keys, servos and the like the code keeps an array of, where parts list and text agree on another number
 * and the text never speaks of that of the code.
 */
function* things(build: Build): Iterable<FindingDraft> {
  for (const constant of build.sources.flatMap(({ constants }) => constants)) {
    const named = countedName
      .exec(constant.name ?? '')?.[1]
      ?.toLowerCase()
      .replace(/e$/, '');
    const words = countable.find((one) => one.includes(named ?? ''));
    if (words === undefined || !/^\d{1,3}$/.test(constant.value) || !isArraySize(build, constant)) continue;
    const rows = build.parts.filter((part) => part.fitted && isRealPart(part) && isOneOf(part, words));
    const [row] = rows;
    const n = row === undefined ? undefined : firstValue(row.amount);
    if (row === undefined || rows.length > 1 || n?.unit !== 'pcs' || n.approximate) continue;
    const told = thingsInText(build, words).filter(({ place }) => !overlaps(place, row.place));
    const said = told.find(({ count }) => count === n.n);
    if (n.n === Number(constant.value) || said === undefined) continue;
    if (told.some(({ count }) => count === Number(constant.value))) continue;
    yield {
      subjects: [`code:${constant.place.file}`],
      mark: `count ${constant.name}`,
      sides: [constant.place, row.place, said.place],
      basis: 'read',
      message: `The code counts ${constant.value} (${constant.name}); the parts list has ${n.n}, and the text speaks of ‘${said.place.quote}’.`,
      consequence: 'A builder finds that some of them do nothing, and looks for a bad joint.',
      remedy: 'Decide which of the two is right, and correct the other.',
    };
  }
}

function isArraySize({ texts }: Build, { name, place }: CodeConstant): boolean {
  return new RegExp(`\\[\\s*${name}\\s*\\]`).test(texts.get(place.file)?.text ?? '');
}

/** Whether the first words of a row name such a thing: 'key switch, with cap', not 'cap for key switches'. */
function isOneOf({ description }: Part, words: readonly string[]): boolean {
  const head = (description.split(/[,;(]|\b(?:for|with|of|to)\b/iu)[0] ?? '').trim().split(/\s+/u).at(-1) ?? '';
  return words.includes(singular(head.toLowerCase()));
}

function singular(word: string): string {
  return word.replace(/(?<=ch)es$|s$/u, '');
}

function thingsInText(build: Build, words: readonly string[]): { place: TextPlace; count: number }[] {
  const names = words.map((word) => `${word}(?:s|es)`).join('|');
  const pattern = new RegExp(
    `(?<![\\p{L}\\d.,-])(\\d{1,3}|${spelled.join('|')})(?: \\p{Ll}+){0,2}? (?:${names})(?!\\p{L})`,
    'giu',
  );
  return guideTexts(build).flatMap((source) =>
    [...source.text.matchAll(pattern)].map((match) => {
      const written = (match[1] ?? '').toLowerCase();
      const place = placeOf(source, [match.index, match.index + match[0].length]);
      return { place, count: spelled.includes(written) ? spelled.indexOf(written) + 2 : Number(written) };
    }),
  );
}

function overlaps(a: TextPlace, b: Place): boolean {
  return b.kind === 'text' && a.file === b.file && a.span[0] < b.span[1] && b.span[0] < a.span[1];
}

function guideTexts(build: Build): SourceText[] {
  const guide = new Set(build.instructions.sections.map(({ file }) => file));
  return proseOf(build).filter(({ file }) => guide.has(file));
}

/** What the code opens the line to the computer with, against what text and manifest say. */
function* serialSpeed(build: Build): Iterable<FindingDraft> {
  const opened = build.sources.flatMap((source) => {
    const text = build.texts.get(source.file)?.text ?? '';
    const written = [...text.matchAll(/\bSerial\.begin\(\s*(\w+)/g)].map((match) => match[1] ?? '');
    const constants = build.sources.flatMap(({ constants: all }) => all);
    return written.flatMap((word) =>
      constants.filter(({ kind, name, value }) => kind === 'baud' && (name === word || value === word)),
    );
  });
  const [first] = opened;
  if (first === undefined) return;
  const all = build.sources.flatMap(({ constants }) => constants.filter(({ kind }) => kind === 'baud'));
  const isKnown = (speed: number) => all.some(({ value }) => Number(value.replace(/[uUlL]+$/, '')) === speed);
  for (const { place, speed } of speedsInText(build)) {
    if (!isKnown(speed)) yield differs(first, place, `the text says ${speed} baud`, 'speed');
  }
  for (const { file, settings } of build.targets) {
    const speed = Number(settings.monitor_speed ?? Number.NaN);
    if (!Number.isNaN(speed) && !isKnown(speed)) {
      yield differs(
        first,
        lineOfSetting(build, file, 'monitor_speed', `${speed}`),
        `${file} sets the monitor to ${speed}`,
        'speed',
      );
    }
  }
}

const speeds =
  /(?<![\d.])(\d[\d,\u00a0\u202f]{2,8}) ?(?:baud|bps)\b|\bbaud(?: ?rate)?(?: of| to| is| at|:| =)? (\d[\d,]{2,8})|\bserial monitor\b[^.\n|]{0,30}? (?:at|to) (\d{4,7})\b/giu;
/** Words of a sentence about another speed than that of the monitor. */
const otherLines = /\b(?:upload|flash|esptool|gps|gnss|receiver|modem|midi|serial ?[12]|uart ?[12]|module|sensor)/i;

function speedsInText(build: Build): { place: TextPlace; speed: number }[] {
  return guideTexts(build).flatMap((source) =>
    [...source.text.matchAll(speeds)].flatMap((match) => {
      const from = Math.max(...['.', '\n', '|'].map((mark) => source.text.lastIndexOf(mark, match.index))) + 1;
      const sentence = source.text.slice(from, match.index + match[0].length);
      const speed = Number((match[1] ?? match[2] ?? match[3] ?? '').replace(/\D/g, ''));
      if (otherLines.test(sentence) || speed < 300) return [];
      return [{ place: placeOf(source, [match.index, match.index + match[0].length]), speed }];
    }),
  );
}

/** Width and height that the code gives a display, against the one display of the parts list. */
function* displaySize(build: Build): Iterable<FindingDraft> {
  const settings = build.sources.flatMap(({ constants }) => constants);
  const side = (pattern: RegExp) => {
    const found = settings.filter(({ name, value }) => name !== null && pattern.test(name) && /^\d+$/.test(value));
    return found.length === 1 ? found[0] : undefined;
  };
  const width = side(/^(?:screen|display|oled|lcd|tft)_?(?:width|w)$/i);
  const height = side(/^(?:screen|display|oled|lcd|tft)_?(?:height|h)$/i);
  if (width === undefined || height === undefined) return;
  const displays = build.parts.flatMap((part) => {
    const size = /(?<![\d.])(\d{2,4})\s*[x×*]\s*(\d{2,4})(?!\s*mm|\d)/iu.exec(part.description);
    return size !== null && /oled|lcd|tft|display|screen|e-?paper/i.test(part.description)
      ? [{ part, size: [Number(size[1]), Number(size[2])] }]
      : [];
  });
  const [only] = displays;
  if (only === undefined || displays.length > 1) return;
  const sorted = (sides: readonly number[]) => sides.toSorted((a, b) => a - b).join(' × ');
  const own = [Number(width.value), Number(height.value)];
  if (sorted(own) === sorted(only.size)) return;
  yield {
    subjects: [`code:${height.place.file}`],
    mark: 'display',
    sides: [height.place, width.place, only.part.place],
    message: `The code draws on ${own.join(' × ')}; the parts list has a display of ${only.size.join(' × ')}.`,
    consequence: 'A builder sees half of the picture, or a squeezed one.',
    remedy: 'Decide which of the two is right, and correct the other.',
  };
}

function differs(constant: CodeConstant, place: Place, says: string, what: 'lights' | 'speed'): FindingDraft {
  const named = constant.name === null ? '' : ` (${constant.name})`;
  return {
    subjects: [`code:${constant.place.file}`],
    mark: `${what} ${says}`,
    sides: [place, constant.place],
    basis: what === 'speed' && place.kind === 'text' ? 'read' : 'declared',
    message:
      what === 'lights'
        ? `The code counts ${constant.value} lights${named}; ${says}.`
        : `The code opens the serial line at ${constant.value} baud${named}; ${says}.`,
    consequence:
      what === 'lights'
        ? 'A builder sees lights stay dark, or colours where none belong, and looks for a bad joint.'
        : 'A builder sees rubbish or nothing in the monitor, and takes a good board for a bad one.',
    remedy: 'Decide which of the two is right, and correct the other.',
  };
}
