import type { Build } from '#core/build.ts';
import type { Include } from '#core/code.ts';
import { defineCheck } from '../defineCheck.ts';
import { proseOf } from '../proseOf.ts';

export const libraryNotNamed = defineCheck({
  id: 'library-not-named',
  title: 'Every library that the code needs is named in the text or in a manifest.',
  weight: 'slows',
  audience: 'builder',
  why: 'Several libraries ship a header of the same name; a builder who guesses gets one that does not compile.',
  basis: 'common practice: includes less those of language, board and build, through a table of headers',
  needs: { subject: ['code'], witnesses: [] },
  *run({ build }) {
    const named = namesGiven(build);
    const seen = new Set<string>();
    for (const include of build.sources.flatMap(({ includes }) => includes)) {
      const library = include.library ?? stemOf(include.written);
      if (include.kind !== 'external' || seen.has(plain(library))) continue;
      seen.add(plain(library));
      if (isNamed(include, named)) continue;
      yield {
        subjects: [`library:${library}`],
        sides: [include.place],
        message:
          include.library === null
            ? `The code asks for ${include.written}; neither text nor manifest says from which library.`
            : `The code asks for ${include.written}, which belongs to ${include.library}; neither text nor manifest names it.`,
        consequence: 'A builder’s first compile stops at this line, and the header alone does not say what to install.',
        remedy: `Name ${include.library ?? 'the library'} and its version in the guide, or add it to the manifest.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'named in the text, under another name than its header',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nInstall the library U8g2 first.\n\n## Fit the display\n\nPlug it in.\n',
          'firmware/main.ino':
            '#include <Arduino.h>\n#include <Wire.h>\n#include <U8x8lib.h>\n#include "pins.h"\n\nvoid setup() {}\nvoid loop() {}\n',
          'firmware/pins.h': '#define LAMP_PIN 5\n',
        },
      },
      {
        title: 'named in a manifest',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nCompile and load it.\n',
          'platformio.ini': '[env:lamp]\nplatform = espressif32\nlib_deps = fastled/FastLED@3.6.0\n',
          'src/main.cpp': '#include <FastLED.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'tests and examples need what they like',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nCompile and load it.\n',
          'firmware/main.cpp': '#include <Arduino.h>\n\nvoid setup() {}\nvoid loop() {}\n',
          'firmware/test/test_lamp.cpp': '#include <unity.h>\n\nint main() { return 0; }\n',
        },
      },
    ],
    fails: [
      {
        title: 'a short name that only hides inside another word',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nCompile and load it. The lamp reacts rapidly.\n',
          'firmware/main.cpp': '#include <Arduino.h>\n#include <PID_v1.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'firmware/main.cpp', line: 2, words: 'PID' }],
      },
      {
        title: 'a library that nobody mentions, asked for twice',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nCompile and load it.\n',
          'firmware/main.cpp': '#include <Arduino.h>\n#include <FastLED.h>\n\nvoid setup() {}\nvoid loop() {}\n',
          'firmware/ring.cpp': '#include <FastLED.h>\n',
        },
        expect: [{ file: 'firmware/main.cpp', line: 2, words: 'FastLED' }],
      },
      {
        title: 'a manifest that names another library',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nCompile and load it.\n',
          'platformio.ini': '[env:lamp]\nplatform = espressif32\nlib_deps = fastled/FastLED@3.6.0\n',
          'src/main.cpp': '#include <FastLED.h>\n#include <PubSubClient.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'src/main.cpp', line: 2, words: 'PubSubClient' }],
      },
    ],
  },
});

interface NamesGiven {
  readonly manifest: readonly string[];
  /** The words as they stand, and all letters and digits run together. */
  readonly prose: { readonly words: string; readonly letters: string };
}

function namesGiven(build: Build): NamesGiven {
  const words = proseOf(build)
    .map(({ text }) => text)
    .join('\n');
  return { manifest: build.dependencies.map(({ library }) => plain(library)), prose: { words, letters: plain(words) } };
}

/** Shorter names turn up inside other words: PID in 'rapid'. */
const shortName = 5;

/** Blanks, hyphens and underscores are written as one likes: 'Adafruit NeoPixel', 'Adafruit_NeoPixel'. */
function isNamed({ library, written }: Include, { manifest, prose }: NamesGiven): boolean {
  const names = [library, stemOf(written)].flatMap((name) => (name === null || name === '' ? [] : [name]));
  return names.some((name) => {
    const letters = plain(name);
    if (manifest.includes(letters)) return true;
    if (letters.length < shortName)
      return new RegExp(`(?<![\\p{L}\\d])${name.replace(/[^\p{L}\d]/gu, '.')}(?![\\p{L}\\d])`, 'iu').test(prose.words);
    return (
      manifest.some((one) => one.includes(letters) || (one.length >= shortName && letters.endsWith(one))) ||
      prose.letters.includes(letters)
    );
  });
}

function stemOf(written: string): string {
  return (written.split('/').pop() ?? written).replace(/\.(?:h|hpp|hh)$/i, '').split('.')[0] ?? written;
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[\s_-]+/g, '');
}
