import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { Place, TextPlace } from '#core/place.ts';
import { placeOf, type SourceText, spanOfLine } from '#core/sourceText.ts';
import { sameLibrary } from '#formats/manifests/readManifest.ts';
import { defineCheck } from '../defineCheck.ts';
import { lineOfSetting } from '../lineOfSetting.ts';
import { proseOf } from '../proseOf.ts';
import { listed } from '../say.ts';

export const versionNotPinned = defineCheck({
  id: 'version-not-pinned',
  title: 'Libraries and the core of the board are named with the versions that the code was built with.',
  weight: 'slows',
  audience: 'builder',
  why: 'Libraries and cores change their functions from one version to the next; code that compiled stops compiling.',
  basis: 'common practice: a build that can be repeated names the version of everything it takes in',
  needs: { subject: ['code', 'guide'], witnesses: [] },
  *run(judged) {
    const { build } = judged;
    const sources = proseOf(build);
    const lines = sources.flatMap(({ text }) => text.split(/[\r\n]+/));
    const libraries = namedLibraries(build, sources);
    const open = libraries.filter(({ isPinned }) => !isPinned);
    const core = coreWithoutVersion(judged, lines.map(withoutVersionsOf(namesOf(build)))) ?? coreInText(sources);
    if (open.length === 0 && core === null) return;
    yield {
      subjects: ['build:versions'],
      sides: [...(core === null ? [] : [core.place]), ...open.flatMap(({ places }) => places)].slice(0, 5),
      weight: open.length === 0 && core?.isInText === true ? 'tidy' : 'slows',
      message: [
        open.length === 0
          ? null
          : openLibraries(
              open.map(({ name }) => name),
              libraries.length,
            ),
        core === null ? null : `No version is named for ${core.what}.`,
      ]
        .filter((part) => part !== null)
        .join(' '),
      consequence: 'A builder gets the versions of the day. Where one has changed since, the code no longer compiles.',
      remedy: 'Look the versions up where the code last compiled, and write them into the manifest or the guide.',
    };
  },
  examples: {
    passes: [
      {
        title: 'versions in the manifest',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nBuild and upload it with the settings in platformio.ini.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'platformio.ini':
            '[env:lamp]\nplatform = espressif32@6.9.0\nboard = esp32dev\nframework = arduino\nlib_deps =\n  fastled/FastLED@^3.9.4\n',
          'src/main.cpp': '#include <Arduino.h>\n#include <FastLED.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'versions in the text, and a board whose core comes along',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\n| library | version |\n| --- | --- |\n| FastLED | 3.9.4 |\n\nChoose the board Uno and upload.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Arduino Uno board\n',
          'main.ino': '#include <FastLED.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'a library that nobody names is another matter',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload it.\n',
          'main.ino': '#include <FastLED.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'an interpreter with its version, and cores of another kind',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nLoad MicroPython on to the board. Version 1.24 was used. Put a ferrite core on the three-core cable.\n\n## Try it\n\nYou need not install the core again.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Arduino Uno board\n',
          'main.py': 'import machine\n',
        },
      },
    ],
    fails: [
      {
        title: 'a core in the text without a version, beside the version of another program',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nOpen it in the editor, version 2.3 or later. Install the core for AVR boards. Upload it.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Arduino Uno board\n',
          'main.ino': 'void setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'core for AVR boards' }],
      },
      {
        title: 'a name in the text, without a version',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nInstall FastLED. It drives the ring at 3.3 V.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Arduino Uno board\n',
          'main.ino': '#include <FastLED.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino', line: 1, words: 'FastLED' }],
      },
      {
        title: 'a version behind the name of a library is none of the core',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nBuild it with platformio.ini, which names the core and the library FastLED 3.9.4.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'platformio.ini':
            '[env:lamp]\nplatform = espressif32\nboard = esp32dev\nframework = arduino\nlib_deps = fastled/FastLED@3.9.4\n',
          'src/main.cpp': '#include <Arduino.h>\n#include <FastLED.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'platformio.ini', line: 2, words: 'espressif32' }],
      },
      {
        title: 'a manifest that leaves both open',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nBuild and upload it with the settings in platformio.ini.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'platformio.ini':
            '[env:lamp]\nplatform = espressif32\nboard = esp32dev\nframework = arduino\nlib_deps =\n  fastled/FastLED\n  knolleary/PubSubClient@2.8\n',
          'src/main.cpp':
            '#include <Arduino.h>\n#include <FastLED.h>\n#include <PubSubClient.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'platformio.ini', line: 6, words: '1 of the 2 libraries' }],
      },
    ],
  },
});

function openLibraries(names: readonly string[], all: number): string {
  if (names.length === all)
    return `${all === 1 ? 'The library' : all === 2 ? 'Both libraries' : `All ${all} libraries`} that the code needs ${all === 1 ? 'is' : 'are'} named without a version: ${listed(names)}.`;
  return `${names.length} of the ${all} libraries that the code needs ${names.length === 1 ? 'is' : 'are'} named without a version: ${listed(names)}.`;
}

interface NamedLibrary {
  readonly name: string;
  readonly isPinned: boolean;
  readonly places: readonly Place[];
}

/** Libraries that the code asks for and that a manifest or the text names. */
function namedLibraries(build: Build, sources: readonly SourceText[]): NamedLibrary[] {
  const found = new Map<string, NamedLibrary>();
  for (const include of build.sources.flatMap(({ includes }) => includes)) {
    const name = include.library ?? stemOf(include.written);
    if (include.kind !== 'external' || found.has(name)) continue;
    const entries = build.dependencies.filter(
      ({ library }) => sameLibrary(library, name) || sameLibrary(library, stemOf(include.written)),
    );
    const spoken = linesWhere(sources, (line) => speaksOf(line, name) || speaksOf(line, stemOf(include.written)));
    if (entries.length + spoken.length === 0) continue;
    const isPinned = entries.some(({ version }) => version !== null) || spoken.some(({ quote }) => holdsVersion(quote));
    const [entry] = entries;
    const places = entry === undefined ? [...spoken.slice(0, 1), include.place] : [entry.place];
    found.set(name, { name, isPinned, places });
  }
  return [...found.values()];
}

/** Boards whose core is installed apart, and changes faster than most libraries. */
const ownCore = /esp-?32|esp-?8266|nodemcu|rp2040|\bpico\b|stm32|nrf5/i;
const coreWords =
  /\b(?:core|platform|boards? (?:package|manager|support)|arduino-(?:esp32|pico)|esp-idf|espressif\w*)\b/i;

interface OpenCore {
  readonly what: string;
  readonly place: Place;
  readonly isInText: boolean;
}

/** All that the code asks for and manifests name, as the text may call it. */
function namesOf({ sources, dependencies }: Build): string[] {
  const included = sources.flatMap(({ includes }) =>
    includes.flatMap(({ library, written }) => [library ?? '', stemOf(written)]),
  );
  const depended = dependencies.map(({ library }) => library.slice(library.lastIndexOf('/') + 1));
  return [...new Set([...included, ...depended])].filter((name) => name.length > 2 && wordsPattern(name) !== '');
}

/** A version right behind the name of a library is that library's alone. */
function withoutVersionsOf(names: readonly string[]): (line: string) => string {
  if (names.length === 0) return (line) => line;
  const any = names.map(wordsPattern).join('|');
  const pinned = new RegExp(
    `(?<![\\p{L}\\d])(?:${any})(?: library)?[\\s,:(|=@\`*_-]*(?:version\\s*)?v?\\d+(?:\\.\\d+)+`,
    'giu',
  );
  return (line) => line.replace(pinned, ' ');
}

function coreWithoutVersion({ build, facts }: Judged, lines: readonly string[]): OpenCore | null {
  const target = build.targets.find(({ settings }) => settings.platform !== undefined);
  if (target !== undefined) {
    const platform = target.settings.platform ?? '';
    const isPinned = /[@#(]\s*[~^=<>v]*\s*\w*\d/.test(platform) || target.settings.platform_packages !== undefined;
    if (isPinned || lines.some((line) => coreWords.test(line) && holdsVersion(line))) return null;
    return platform !== ''
      ? {
          what: `the platform ${platform} in ${target.file}`,
          place: lineOfSetting(build, target.file, 'platform', platform),
          isInText: false,
        }
      : null;
  }
  const controller = facts.controllers[0]?.value;
  const part = build.parts.find(({ id }) => id === controller?.part);
  const source = build.sources.find(({ file, language }) => language === 'cpp' && controller?.files.includes(file));
  if (part === undefined || source === undefined || !ownCore.test(part.description)) return null;
  // Where nobody speaks of a core, the board itself is what has to be named first.
  if (!lines.some((line) => coreWords.test(line)) || lines.some((line) => coreWords.test(line) && holdsVersion(line)))
    return null;
  return {
    what: `the core of ${part.refs[0] ?? part.description}`,
    place: { kind: 'file', file: source.file },
    isInText: false,
  };
}

const coreToInstall =
  /\b(?:install|load|flash|copy|put|upload|download|add)\b[^.]*?\b((?:AVR|megaAVR|SAMD?|STM32\w*|ESP-?\d+\w*|RP2040|ATtiny\w*|nRF\d+\w*|Pico)\b(?: \w+){0,2} core|core for (?:\w+ ){0,2}boards|(?<=install the )core(?=[.,;]|$)|MicroPython|CircuitPython)\b/iu;

/** A core or an interpreter that the text tells to install, where no sentence with its name gives a version. */
function coreInText(sources: readonly SourceText[]): OpenCore | null {
  const place = linesWhere(sources, (line) => coreToInstall.test(line))[0];
  const name = place === undefined ? undefined : coreToInstall.exec(place.quote)?.[1];
  if (place === undefined || name === undefined) return null;
  const word = /MicroPython|CircuitPython/i.exec(name)?.[0] ?? 'core';
  const isTold = linesWhere(sources, (line) => speaksOf(line, word)).some(({ quote }) => {
    const sentences = quote.split(/(?<=[.!?])\s+(?=\p{Lu})/u);
    return sentences.some(
      (sentence, index) =>
        speaksOf(sentence, word) && (holdsVersion(sentence) || /\bversion\b/i.test(sentences[index + 1] ?? '')),
    );
  });
  return isTold ? null : { what: name, place, isInText: true };
}

function linesWhere(sources: readonly SourceText[], isMeant: (line: string) => boolean): TextPlace[] {
  return sources.flatMap((source) =>
    source.lineStarts.flatMap((_, index) => {
      const place = placeOf(source, spanOfLine(source, index + 1));
      return isMeant(place.quote) ? [place] : [];
    }),
  );
}

function speaksOf(line: string, name: string): boolean {
  const pattern = wordsPattern(name);
  return pattern !== '' && new RegExp(`(?<![\\p{L}\\d])${pattern}(?![\\p{L}\\d])`, 'iu').test(line);
}

/** Blanks, hyphens and underscores are written as one likes. */
function wordsPattern(name: string): string {
  return name
    .replace(/[^\p{L}\d]+/gu, ' ')
    .trim()
    .split(' ')
    .map(escaped)
    .join('[\\s_-]*');
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** A number such as 3.9 or v2.0.14, that no unit follows. */
function holdsVersion(line: string): boolean {
  return (
    /(?<![\d.])v?\d+\.\d+(?:\.\d+)*(?![\d.]*\s?(?:V|A|mA|W|mm|cm|m|GHz|MHz|kHz|Hz|s|ms|kΩ|Ω|µF|nF|%|°|EUR|USD|GBP)\b)(?!\d)/u.test(
      line,
    ) || /\bversion \d/i.test(line)
  );
}

function stemOf(written: string): string {
  return (written.split('/').pop() ?? written).replace(/\.(?:h|hpp|hh)$/i, '').split('.')[0] ?? written;
}
