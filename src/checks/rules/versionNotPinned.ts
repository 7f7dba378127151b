import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { Place } from '#core/place.ts';
import { sameLibrary } from '#formats/manifests/readManifest.ts';
import { defineCheck } from '../defineCheck.ts';
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
    const lines = proseOf(build).flatMap(({ text }) => text.split(/[\r\n]+/));
    const libraries = namedLibraries(build, lines);
    const open = libraries.filter(({ isPinned }) => !isPinned);
    const core = coreWithoutVersion(judged, lines);
    if (open.length === 0 && core === null) return;
    yield {
      subjects: ['build:versions'],
      sides: [...open.map(({ place }) => place), ...(core === null ? [] : [core.place])].slice(0, 5),
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
    ],
    fails: [
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
  readonly place: Place;
}

/** Libraries that the code asks for and that a manifest or the text names. */
function namedLibraries(build: Build, lines: readonly string[]): NamedLibrary[] {
  const found = new Map<string, NamedLibrary>();
  for (const include of build.sources.flatMap(({ includes }) => includes)) {
    const name = include.library ?? stemOf(include.written);
    if (include.kind !== 'external' || found.has(name)) continue;
    const entries = build.dependencies.filter(
      ({ library }) => sameLibrary(library, name) || sameLibrary(library, stemOf(include.written)),
    );
    const spoken = lines.filter((line) => speaksOf(line, name) || speaksOf(line, stemOf(include.written)));
    if (entries.length + spoken.length === 0) continue;
    const isPinned = entries.some(({ version }) => version !== null) || spoken.some(holdsVersion);
    found.set(name, { name, isPinned, place: entries[0]?.place ?? include.place });
  }
  return [...found.values()];
}

/** Boards whose core is installed apart, and changes faster than most libraries. */
const ownCore = /esp-?32|esp-?8266|nodemcu|rp2040|\bpico\b|stm32|nrf5/i;
const coreWords =
  /\b(?:core|platform|boards? (?:package|manager|support)|arduino-(?:esp32|pico)|esp-idf|espressif\w*)\b/i;

function coreWithoutVersion({ build, facts }: Judged, lines: readonly string[]): { what: string; place: Place } | null {
  const target = build.targets.find(({ settings }) => settings.platform !== undefined);
  if (target !== undefined) {
    const platform = target.settings.platform ?? '';
    const isPinned = /[@#(]\s*[~^=<>v]*\s*\w*\d/.test(platform) || target.settings.platform_packages !== undefined;
    if (isPinned || lines.some((line) => coreWords.test(line) && holdsVersion(line))) return null;
    return platform !== ''
      ? { what: `the platform ${platform} in ${target.file}`, place: { kind: 'file', file: target.file } }
      : null;
  }
  const controller = facts.controllers[0]?.value;
  const part = build.parts.find(({ id }) => id === controller?.part);
  const source = build.sources.find(({ file, language }) => language === 'cpp' && controller?.files.includes(file));
  if (part === undefined || source === undefined || !ownCore.test(part.description)) return null;
  // Where nobody speaks of a core, the board itself is what has to be named first.
  if (!lines.some((line) => coreWords.test(line)) || lines.some((line) => coreWords.test(line) && holdsVersion(line)))
    return null;
  return { what: `the core of ${part.refs[0] ?? part.description}`, place: { kind: 'file', file: source.file } };
}

function speaksOf(line: string, name: string): boolean {
  const pattern = name
    .replace(/[^\p{L}\d]+/gu, ' ')
    .trim()
    .split(' ')
    .map(escaped)
    .join('[\\s_-]*');
  return pattern !== '' && new RegExp(`(?<![\\p{L}\\d])${pattern}(?![\\p{L}\\d])`, 'iu').test(line);
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
