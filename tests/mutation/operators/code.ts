import { guideLines } from '../guideOf.ts';
import { type Change, type Draft, type Operator, type Spot, word } from '../mutant.ts';
import { linesIn, type Project } from '../project.ts';
import { codeLinesOf, controllerOf, joinsOf, numberOf, otherPin, pinOn, wiresOf } from './wiring.ts';

interface PinLine extends Spot {
  readonly words: string;
  readonly pin: string;
  readonly rows: readonly Spot[];
  readonly joins: readonly Spot[];
}

/** Lines of code that state a pin which the wiring has. */
function pinLines(project: Project): PinLine[] {
  const controller = controllerOf(project);
  const seen = new Map<string, PinLine>();
  for (const wire of wiresOf(project)) {
    const pin = pinOn(wire.from, controller) ?? pinOn(wire.to, controller);
    for (const spot of codeLinesOf(project, wire)) {
      const before = seen.get(`${spot.file}:${spot.line}`);
      const words = linesIn(project, spot.file)[spot.line - 1] ?? '';
      if (pin === null) continue;
      seen.set(`${spot.file}:${spot.line}`, {
        ...spot,
        words,
        pin: numberOf(pin) ?? pin,
        rows: [...(before?.rows ?? []), wire.row],
        joins: [...(before?.joins ?? []), ...joinsOf(project, wire)],
      });
    }
  }
  return [...seen.values()];
}

function withPin({ words, pin }: PinLine, other: string): string {
  return words.replace(new RegExp(`(?<=(?:= |#define \\w+ ))${pin}\\b`), other);
}

/** A pin was moved in the code alone. */
export const pinInCodeChanged: Operator = (project) =>
  pinLines(project).flatMap((line): Draft[] => {
    const other = otherPin(project, line.pin);
    const words = other === null ? line.words : withPin(line, other);
    if (words === line.words) return [];
    return [
      {
        title: `the code says ${words.trim()}`,
        changes: [word(line.file, line.line, words)],
        at: [line, ...line.rows],
        reaches: line.joins,
        why: 'The builder’s wire is right, and nothing happens.',
      },
    ];
  });

/** Two names of the code have one pin. */
export const pinDoubled: Operator = (project) => {
  const lines = pinLines(project);
  return lines.flatMap((line, index): Draft[] => {
    const other = lines[(index + 1) % lines.length];
    const words = other === undefined || other.pin === line.pin ? line.words : withPin(line, other.pin);
    if (other === undefined || words === line.words) return [];
    return [
      {
        title: `the code says ${words.trim()}, and another name has that pin`,
        changes: [word(line.file, line.line, words)],
        at: [line, other, ...line.rows],
        reaches: [...line.joins, ...other.rows, ...other.joins],
        why: 'Two things answer to one pin.',
      },
    ];
  });
};

/** Two names of the code have each other's pins. */
export const pinsSwapped: Operator = (project) => {
  const lines = pinLines(project);
  return lines.slice(1).flatMap((line, index): Draft[] => {
    const other = lines[index];
    if (other === undefined || other.file !== line.file || other.pin === line.pin) return [];
    const words = new Map([
      [line.line, withPin(line, other.pin)],
      [other.line, withPin(other, line.pin)],
    ]);
    if (words.get(line.line) === line.words) return [];
    return [
      {
        title: `${line.words.trim()} and ${other.words.trim()} have each other's pins`,
        changes: [{ file: line.file, words }],
        at: [line, other, ...line.rows, ...other.rows],
        reaches: [...line.joins, ...other.joins],
        why: 'Everything moves, and the wrong thing answers.',
      },
    ];
  });
};

interface Named {
  readonly library: string;
  readonly header: RegExp;
}

const libraries: Readonly<Record<string, readonly Named[]>> = {
  'tide-lamp': [
    { library: 'FastLED', header: /FastLED\.h/ },
    { library: 'ESP32Encoder', header: /ESP32Encoder\.h/ },
  ],
  'stale-air': [
    { library: 'BME280', header: /BME280I2C\.h/ },
    { library: 'SGP30', header: /SGP30\.h/ },
  ],
  'quick-finger': [{ library: 'TM1637Display', header: /TM1637Display\.h/ }],
  'twin-pad': [{ library: 'Keyboard', header: /Keyboard\.h/ }],
};

function linesWith(project: Project, files: readonly string[], pattern: RegExp): (Spot & { words: string })[] {
  return files.flatMap((file) =>
    linesIn(project, file).flatMap((words, index) => (pattern.test(words) ? [{ file, line: index + 1, words }] : [])),
  );
}

/** A library with its version is named nowhere any more. */
export const libraryDropped: Operator = (project) =>
  (libraries[project.name] ?? []).map(({ library, header }): Draft => {
    const named = new RegExp(`(?:,? (?:both libraries,|and the library|the library|and)? ?)?\\b${library} \\d[\\d.]+`);
    const manifest = linesWith(project, project.code, new RegExp(`^ *${library}@`));
    const texts = linesWith(project, project.guide, new RegExp(`\\b${library} \\d`));
    const files = [...new Set([...manifest, ...texts].map(({ file }) => file))];
    return {
      title: `nothing names the library ${library}`,
      changes: files.map(
        (file): Change => ({
          file,
          without: new Set(manifest.filter((one) => one.file === file).map(({ line }) => line)),
          words: new Map(
            texts.filter((one) => one.file === file).map(({ line, words }) => [line, words.replace(named, '')]),
          ),
        }),
      ),
      at: linesWith(project, project.code, header),
      why: 'The first compile stops at the header.',
    };
  });

/** A version is forgotten. */
export const versionDropped: Operator = (project) => {
  const pinned = [
    ...linesWith(project, project.code, /^ *(?:platform = \w+|\w+)@\d/).map((one) => ({
      ...one,
      to: one.words.replace(/@[\d.]+$/, ''),
    })),
    ...linesWith(
      project,
      project.guide,
      /\b(?:library \w+|core(?: for AVR boards, version)?|MicroPython) \d+\.\d+/,
    ).map((one) => ({
      ...one,
      to: one.words.replace(
        /(\b(?:library \w+|core|MicroPython))(?: for AVR boards, version)? \d+\.\d+(?:\.\d+)?/g,
        '$1',
      ),
    })),
  ];
  return pinned.flatMap(({ file, line, words, to }): Draft[] => {
    // What guide and manifest both pin is pinned.
    const library = /^ *(\w+)@/.exec(words)?.[1] ?? '-';
    if (guideLines(project).some((one) => new RegExp(`\\b${library} \\d`).test(one.words))) return [];
    return [
      {
        title: `${words.trim().slice(0, 60)} has no version any more`,
        changes: [word(file, line, to)],
        at: [{ file, line }],
        reaches: linesWith(project, project.code, /^#include/),
        why: 'In a year the newest version does not fit the code.',
      },
    ];
  });
};

/** A number that code and guide share is another one in the code. */
export const numberInCodeChanged: Operator = (project) =>
  linesWith(project, project.code, /\b(?:BAUD|NUM_LEDS|KEYS|monitor_speed)\b.*\d|Serial\.begin\(\d/).flatMap(
    ({ file, line, words }): Draft[] => {
      const [n = ''] = /\b(?:115200|9600|24|12)\b/.exec(words) ?? [];
      const other = { '115200': '57600', '9600': '19200', '24': '16', '12': '10' }[n];
      const said = guideLines(project).filter(({ words: own }) =>
        n.length > 3
          ? own.includes(n)
          : new RegExp(`\\b${n} (?:lights|LEDs|key switches|addressable)|\\b${n}\\b.* lights`).test(own),
      );
      if (n === '' || other === undefined || said.length === 0 || !/= |#define|begin/.test(words)) return [];
      return [
        {
          title: `the code says ${words.trim().replace(n, other)}`,
          changes: [word(file, line, words.replace(n, other))],
          at: [{ file, line }, ...said],
          reaches: [
            ...linesWith(project, [project.parts], new RegExp(`\\b${n}\\b`)),
            ...linesWith(project, project.code, new RegExp(`\\b${n}\\b`)),
          ],
          why: 'The monitor shows garbage, or lights stay dark.',
        },
      ];
    },
  );

/** The speed in the guide is an old one. */
export const speedInGuideChanged: Operator = (project) =>
  guideLines(project).flatMap(({ file, line, words }): Draft[] => {
    const [n = ''] = /\b(?:115200|9600)\b/.exec(words) ?? [];
    if (n === '') return [];
    return [
      {
        title: `the guide says ${n === '9600' ? '115200' : '9600'} baud`,
        changes: [word(file, line, words.replace(n, n === '9600' ? '115200' : '9600'))],
        at: [{ file, line }, ...linesWith(project, project.code, new RegExp(`\\b${n}\\b`))],
        why: 'The monitor shows garbage.',
      },
    ];
  });
