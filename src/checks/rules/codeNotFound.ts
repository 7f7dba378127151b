import type { Judged } from '#core/assembled.ts';
import type { Path } from '#core/place.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const codeNotFound = defineCheck({
  id: 'code-not-found',
  title: 'The code that steps load, and the files that it includes, are in the build.',
  weight: 'halts',
  audience: 'builder',
  why: 'A file that is ignored by version control is on the maker’s disk and nowhere else.',
  basis: 'common practice: resolve each path and each local include',
  needs: { subject: ['code or steps'], witnesses: [] },
  rehearsal: true,
  *run(judged) {
    yield* loadedBySteps(judged);
    yield* includedByCode(judged);
  },
  examples: {
    passes: [
      {
        title: 'the file is there, and so is what it includes',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\n- Code: firmware/main.cpp\n\nLoad it.\n',
          'firmware/main.cpp': '#include <Arduino.h>\n#include "pins.h"\n\nvoid setup() {}\nvoid loop() {}\n',
          'firmware/pins.h': '#define LAMP_PIN 5\n',
        },
      },
      {
        title: 'a file that the builder is told to write',
        files: {
          'guide.md':
            '# Night light\n\n## Name your network\n\nCopy secrets.example.h to secrets.h and fill it in.\n\n## Load the code\n\n- Code: firmware/main.cpp\n\nLoad it.\n',
          'firmware/main.cpp': '#include <Arduino.h>\n#include "secrets.h"\n\nvoid setup() {}\nvoid loop() {}\n',
          'firmware/secrets.example.h': '#define WIFI_NAME "your-ssid"\n',
        },
      },
    ],
    fails: [
      {
        title: 'a step loads what is not there',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\n- Code: firmware/lamp.cpp\n\nLoad it.\n',
          'firmware/main.cpp': '#include <Arduino.h>\n\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'firmware/lamp.cpp' }],
      },
      {
        title: 'settings that stayed on the maker’s disk',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\n- Code: firmware/main.cpp\n\nLoad it.\n',
          'firmware/main.cpp': '#include <Arduino.h>\n#include "config.h"\n\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'firmware/main.cpp', line: 2, words: 'config.h' }],
      },
      {
        title: 'capitals that only some machines let pass',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\n- Code: main.py\n\nCopy main.py and lamp.py. The Lamp glows.\n',
          'main.py': 'from machine import Pin\nfrom Lamp import Lamp\n\nLamp(Pin(5)).on()\n',
          'lamp.py': 'class Lamp:\n    def __init__(self, pin):\n        self.pin = pin\n',
        },
        expect: [{ file: 'main.py', line: 2, words: 'lamp.py' }],
      },
    ],
  },
});

function* loadedBySteps({ build, ledger }: Judged): Iterable<FindingDraft> {
  for (const stop of ledger.stops) {
    if (stop.kind !== 'code-missing' || stop.step === null) continue;
    const near = sameName(
      stop.path,
      build.files.map(({ path }) => path),
    );
    yield {
      subjects: [`code:${stop.path}`, `step:${stop.step}`],
      sides: stop.claim?.places ?? [],
      message: `The step ${stepName(build, stop.step)} loads ${stop.path}; there is no such file.${near === null ? '' : ` A file of that name lies at ${near}.`}`,
      consequence: 'A builder has nothing to load, and cannot go on.',
      remedy: near === null ? 'Put the file into the folder, or correct the path.' : `Write ${near}.`,
    };
  }
}

/** Names that makers give to files of their own, and keep out of version control. */
const ownFiles = /secret|config|credential|setting|password|pins?\b|board/i;

function* includedByCode({ build }: Judged): Iterable<FindingDraft> {
  const code = new Set(build.sources.map(({ file }) => file));
  const prose = [...build.texts.values()].filter(({ file }) => !code.has(file)).map(({ text }) => text);
  const paths = build.files.map(({ path }) => path);
  for (const { file, language, includes } of build.sources) {
    for (const { kind, found, written, place } of includes) {
      const name = written.slice(written.lastIndexOf('/') + 1);
      if (kind !== 'local' || found) continue;
      const spelled = spelledOtherwise(language === 'python' ? `${written.split('.').at(-1)}.py` : name, paths);
      if (spelled !== null) {
        yield {
          subjects: [`code:${file}`],
          mark: written,
          sides: [place],
          weight: 'slows',
          message: `${file} asks for ${written}; on disk it is spelled ${spelled}.`,
          consequence: 'On a machine or a board where capitals count, the file is not found and nothing runs.',
          remedy: 'Spell the file and what asks for it the same way.',
        };
        continue;
      }
      if (prose.some((text) => text.includes(name))) continue;
      const example = exampleOf(name, paths);
      yield {
        subjects: [`code:${file}`],
        mark: written,
        sides: [place],
        weight: example === null && ownFiles.test(name) ? 'halts' : 'slows',
        message: `${file} includes ${written}; there is no such file in the build.`,
        consequence: 'A builder’s first compile stops at this line.',
        remedy:
          example === null
            ? 'Put the file into the folder; or, where it holds secrets, an example of it, and say in the guide how to fill it in.'
            : `Say in the guide that ${example} is to be copied to ${name} and filled in.`,
      };
    }
  }
}

/** A file such as secrets.example.h, from which the missing one is to be made. */
function exampleOf(name: string, paths: readonly Path[]): Path | null {
  const stem = (name.split('.')[0] ?? name).toLowerCase();
  const isExample = (path: Path) => {
    const other = path.slice(path.lastIndexOf('/') + 1).toLowerCase();
    return other.includes(stem) && /example|sample|template|default|dist/.test(other);
  };
  return paths.find(isExample) ?? null;
}

/** The one file whose name has the same letters, some of them capital where the other has small ones. */
function spelledOtherwise(name: string, paths: readonly Path[]): Path | null {
  const found = sameName(name, paths);
  return found === null || found === name || found.endsWith(`/${name}`) ? null : found;
}

function sameName(path: Path, paths: readonly Path[]): Path | null {
  const name = path.slice(path.lastIndexOf('/') + 1).toLowerCase();
  const found = paths.filter((one) => one.slice(one.lastIndexOf('/') + 1).toLowerCase() === name);
  return found.length === 1 ? (found[0] ?? null) : null;
}
