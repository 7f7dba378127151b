import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { plainText } from '#core/text.ts';
import { endingOf } from '#formats/roles/fileKind.ts';
import boards from '#prose/microcontrollers.json';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import forms from '../knowledge/programFiles.json';
import { linksOf } from '../linksOf.ts';
import { fittedRows, rowName, rowWords } from '../partWords.ts';
import { everyInline, runsOf } from '../runningText.ts';
import { stepName } from '../say.ts';
import { isWrittenOut, proseWords } from '../writtenGuide.ts';

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
    if (!facts.actions.some(({ kind, told }) => kind === 'load-code' && told === 'do'))
      yield* boardWithoutCode({ build, facts });
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
      {
        title: 'a program of somebody else behind a link',
        files: {
          'guide.md':
            '# Lamp\n\n## Print it\n\nSlice it with [a slicer](https://slicer.example/software/slicer).\n\n## Fit it\n\nSolder D1.\n\n## Join it\n\nPlug the lead in.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Quantity,Description\n1,Microcontroller board RP2040\n1,LED\n1,Lid\n',
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
      {
        title: 'a board, and a page of its software',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nSolder D1.\n\n## Join it\n\nPlug the lead in.\n\n## Try it\n\nOpen [the page](https://code.example/lamp-software/) and wait.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Quantity,Description\n1,Microcontroller board RP2040\n1,LED\n1,Lid\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'runs code' }],
      },
    ],
  },
});

const comesLoaded =
  /\bpre-?(?:programmed|loaded|flashed|installed)\b|\b(?:already|comes|come) (?:programmed|loaded|flashed|with (?:its |the )?(?:firmware|code|software))\b/iu;

/** A controller in the list, a page of its software elsewhere, and no step that loads anything. */
function* boardWithoutCode({ build, facts }: Pick<Judged, 'build' | 'facts'>): Iterable<FindingDraft> {
  const board = fittedRows(build).find((part) => controller.test(rowWords(part)));
  const isLoaded = Object.values(facts.steps).some(({ loads }) => loads.length > 0);
  if (board === undefined || isLoaded || !isWrittenOut(build) || comesLoaded.test(proseWords(build))) return;
  const links = build.instructions.sections.flatMap(linksOf).filter(({ url }) => ownSoftware.test(url));
  if (links.length === 0) return;
  yield {
    subjects: ['build:code'],
    mark: 'board',
    sides: [...links.slice(0, 4).map(({ place }) => place), board.place],
    basis: 'read',
    message: `${rowName(board)} runs code; the folder holds none, no step loads any, and only links lead to its software.`,
    consequence: 'A builder gets the code of another day, or none.',
    remedy: 'Put the code, or an image of it, into the folder with its version, and say in a step how to load it.',
  };
}

/** Names such as `lamp-software`; a path that only begins with /software/ may lead to any program. */
const ownSoftware = /^https?:\/\/\S*(?:firmware|[\p{L}\d][-_]software|sketch(?:es)?\b|source-?code)/iu;
const controller = new RegExp(`\\b(?:${boards.sure.join('|')})`, 'iu');

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
