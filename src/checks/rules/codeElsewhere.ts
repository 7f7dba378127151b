import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { plainText } from '#core/text.ts';
import { endingOf } from '#formats/roles/fileKind.ts';
import { defineCheck } from '../defineCheck.ts';
import forms from '../knowledge/programFiles.json';
import { everyInline, runsOf } from '../runningText.ts';
import { stepName } from '../say.ts';

export const codeElsewhere = defineCheck({
  id: 'code-elsewhere',
  title: 'The code that steps load lies in the folder, as source or as an image.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Code behind a link goes on to change; the board was built with the version of that day.',
  basis: 'common practice: what a builder loads is part of the build',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build, facts }) {
    if (build.sources.length > 0 || build.files.some(({ path }) => isProgram(path))) return;
    const loading = facts.actions.filter(
      ({ kind, told, step }) => kind === 'load-code' && told === 'do' && step !== null,
    );
    const [first] = loading;
    if (first?.step == null || Object.values(facts.steps).some(({ loads }) => loads.length > 0)) return;
    const away = awayFrom(build);
    const isLinked = away !== null;
    yield {
      subjects: ['build:code'],
      sides: [...loading.slice(0, 4).map(({ place }) => place), ...(away === null ? [] : [away])],
      basis: 'read',
      message: `${stepName(build, first.step)} has a builder load code; the folder holds no code and no image of it${isLinked ? ', only links to elsewhere' : ''}.`,
      consequence: isLinked
        ? 'A builder gets whatever stands there on that day, or nothing.'
        : 'A builder has nothing to load.',
      remedy: 'Put the code, or the image that was loaded, into the folder; else name its version beside the link.',
    };
  },
  examples: {
    passes: [
      {
        title: 'the code is there',
        files: {
          'guide.md': '# Lamp\n\n## Load it\n\nUpload the sketch to the board.\n',
          'lamp.ino': 'void setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'an image is there; nothing is loaded',
        files: {
          'guide.md': '# Lamp\n\n## Flash it\n\nFlash the firmware to the board.\n',
          'lamp.uf2': 'UF2\n',
        },
      },
      {
        title: 'a board that comes with its code',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nThe code is loaded at the works; do not flash the firmware again. Solder D1.\n',
        },
      },
    ],
    fails: [
      {
        title: 'nothing at all',
        files: { 'guide.md': '# Lamp\n\n## Fit it\n\nSolder D1.\n\n## Load it\n\nFlash the firmware to the board.\n' },
        expect: [{ file: 'guide.md', line: 9, words: 'no code and no image of it.' }],
      },
      {
        title: 'a link',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nSolder D1.\n\n## Load it\n\nFlash [the firmware](https://code.example/lamp) to the board.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'only links' }],
      },
      {
        title: 'a link in another section than the loading',
        files: {
          'guide.md':
            '# Lamp\n\n## Test it\n\nSolder D1, flash the firmware and look.\n\n## About the code\n\nThe firmware is part of [a larger program](https://code.example/lamp).\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'only links' }],
      },
    ],
  },
});

const programs = new Set(forms.endings);

function isProgram(path: string): boolean {
  const isSettings = /(?:^|\/)(?:twicebuilt|_?config|mkdocs|package(?:-lock)?)\.(?:ya?ml|json)$/i.test(path);
  if (isSettings) return false;
  return programs.has(endingOf(path)) || /(?:^|\/)(?:code|firmware|software|src|arduino|sketch(?:es)?)\//i.test(path);
}

/** The words about code with a link to elsewhere, anywhere in the guide. */
function awayFrom({ instructions }: Build): TextPlace | null {
  const away = instructions.sections.flatMap(runsOf).find(({ nodes }) => {
    const leads = everyInline(nodes).some((node) => node.kind === 'link' && /^https?:/i.test(node.url));
    return leads && /\b(?:firmware|code|sketch|software|program|hex|binary)\b/i.test(plainText(nodes));
  });
  return away?.place ?? null;
}
