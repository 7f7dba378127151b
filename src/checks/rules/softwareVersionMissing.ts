import type { TextPlace } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import { defineCheck } from '../defineCheck.ts';
import table from '../knowledge/softwareNames.json';
import { proseOf } from '../proseOf.ts';
import { listed } from '../say.ts';

export const softwareVersionMissing = defineCheck({
  id: 'software-version-missing',
  title: 'Programs that a builder has to install are named with a version.',
  weight: 'tidy',
  audience: 'publisher',
  words: 'English',
  why: 'Menus move and formats change; in three years nobody knows which version the guide was written for.',
  basis: 'common practice of journals for open hardware: software with its version',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    const guide = new Set(build.instructions.sections.map(({ file }) => file));
    const found = new Map<string, { place: TextPlace; isVersioned: boolean }>();
    for (const source of proseOf(build)) {
      for (const match of source.text.matchAll(programs)) {
        const name = match[0];
        const entry = found.get(name.toLowerCase());
        if (!isAskedFor(source.text, match.index) && entry === undefined) continue;
        const isVersioned =
          (entry?.isVersioned ?? false) || version.test(lineAfter(source.text, match.index + name.length));
        if (!guide.has(source.file) && entry === undefined && !isVersioned) continue;
        const place = entry?.place ?? placeOf(source, [match.index, match.index + name.length]);
        found.set(name.toLowerCase(), { place, isVersioned });
      }
    }
    const open = [...found.values()].filter(({ isVersioned }) => !isVersioned).map(({ place }) => place);
    if (open.length === 0) return;
    yield {
      subjects: ['build:software'],
      sides: open.slice(0, 5),
      message: `The guide asks for ${listed(open.map(({ quote }) => quote))} without saying in which version ${open.length === 1 ? 'it was' : 'they were'} used.`,
      consequence: 'A builder of later years cannot tell whether a difference is a fault or only a newer program.',
      remedy: 'Add the version that you used, such as it stands in the program’s own window.',
    };
  },
  examples: {
    passes: [
      {
        title: 'with a version, once',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nInstall OpenSCAD 2021.01. Open the model in OpenSCAD and export it.\n',
        },
      },
      {
        title: 'no program by name, and a word that is part of a path',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUse a build tool that reads `platformio.ini`.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a name alone',
        files: { 'guide.md': '# Night light\n\n## Load the code\n\nOpen the sketch in the Arduino IDE. Upload.\n' },
        expect: [{ file: 'guide.md', line: 5, words: 'Arduino IDE' }],
      },
      {
        title: 'two of three',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nInstall KiCad 8.0, Thonny and mpremote. Load the code.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'Thonny and mpremote' }],
      },
    ],
  },
});

const programs = new RegExp(`(?<![\\p{L}\\d./\`_-])(?:${table.programs.join('|')})(?![\\p{L}\\d_/-]|\\.[a-z])`, 'gu');
/** A version right behind the name: 'KiCad 8.0', 'PlatformIO Core (6.1.11)', 'Arduino IDE version 2'. */
const version = /^(?:\s+(?:core|app|desktop))?[\s,|(*`]*(?:version |ver\.? ?|v)?\d/i;

/** 'Install', 'open', 'use': the program is asked for, and not only spoken of. */
function isAskedFor(text: string, at: number): boolean {
  const before =
    text
      .slice(0, at)
      .split(/[.!?]\s|[\r\n]/)
      .at(-1) ?? '';
  return /\b(?:install|open|us(?:e|es|ing)|download|launch|start|run|need|require|export|compile|build|upload|flash|via)\w*\b/i.test(
    `${before} ${lineAfter(text, at).split(/[.!?](?:\s|$)/)[0]}`,
  );
}

function lineAfter(text: string, at: number): string {
  const stop = text.slice(at).search(/[\r\n]/);
  return text.slice(at, stop < 0 ? undefined : at + stop);
}
