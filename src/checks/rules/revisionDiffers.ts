import type { Build } from '#core/build.ts';
import type { Place } from '#core/place.ts';
import { otherLanguage } from '#prose/language/languageOf.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { filesPlaying } from '../filesPlaying.ts';
import { listed } from '../say.ts';
import { revisionsBesideGuide, revisionsInGuide, type Spoken } from '../spokenRevisions.ts';

export const revisionDiffers = defineCheck({
  id: 'revision-differs',
  title: 'One revision is named in settings, guide, code and file names, and a builder can tell which one they hold.',
  weight: 'slows',
  audience: 'builder',
  why: 'Who holds revision 1.1 and reads the guide of 1.2 solders a part that is not there.',
  basis: 'common practice: one revision string; DIN SPEC 3105-1 asks for a version on each release',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build, facts }) {
    const spoken = revisionsInGuide(build);
    const own = ownRevision(build, spoken);
    const wrong = own === null ? [] : leftBehind(own, spoken);
    if (own !== null) yield* against(build, own, spoken, wrong);
    if (otherLanguage(facts.language) !== null) return;
    yield* notTellable(
      build,
      spoken.filter((one) => !wrong.includes(one)),
    );
  },
  examples: {
    passes: [
      {
        title: 'one revision everywhere; firmware and its libraries count for themselves',
        files: {
          'twicebuilt.yaml': 'format: 1\nrevision: "1.2"\n',
          'guide.md':
            '# Night light\n\nThis is revision 1.2. Use version 3.9 of the library.\n\n## Fit the lamp\n\nSolder D1.\n',
          'main.cpp': '#define FIRMWARE_VERSION "2.0.1"\nconst char BOARD_REV[] = "v1.2";\nvoid setup() {}\n',
          'hardware/lamp-v1.2.kicad_pcb': '(kicad_pcb)\n',
        },
      },
      {
        title: 'an older revision is told apart',
        files: {
          'twicebuilt.yaml': 'format: 1\nrevision: B\n',
          'guide.md':
            '# Night light\n\nRevision A had no fuse; this guide is for revision B. The revision is printed beside the switch.\n\n## Fit the lamp\n\nSolder D1.\n',
        },
      },
      {
        title: 'histories, chips and programs have revisions of their own, and variants have headings',
        files: {
          'twicebuilt.yaml': 'format: 1\nrevision: "1.2"\n',
          'guide.md':
            '# Night light\n\nTen have been built as revision 1.2. The first lamp was built as revision 1.0, without a fuse. Chips of silicon revision 3 work too. The board is PCB version B.\n\n## Parts of revision 1.1\n\nOld.\n\n## Parts of revision 1.2\n\nNew; it is printed on the board.\n\n## Fit the lamp\n\nSolder D1.\n\n## Changes\n\nThis is revision 1.1: a fuse was added.\n',
          'main.cpp': '// Night light firmware, revision 2.0\nvoid setup() {}\n',
          'dim.cpp': '// Revision 1.0: first\n// Revision 1.1: night light dims\nvoid dim() {}\n',
          'hardware/lamp-rev1.1.kicad_pcb': '(kicad_pcb)\n',
          'hardware/lamp-rev1.2.kicad_pcb': '(kicad_pcb)\n',
        },
      },
    ],
    fails: [
      {
        title: 'one sentence, the head of the program and the list were left behind',
        files: {
          'twicebuilt.yaml': 'format: 1\nrevision: "1.2"\n',
          'guide.md':
            '# Night light\n\nFive have been built as described here, as revision 1.1.\n\n## Fit the lamp\n\nSolder D1.\n\n## Ask\n\nTell us about errors, with revision 1.2 and the name of the step.\n',
          'main.cpp': '/* Night light, revision 1.1 */\nvoid setup() {}\n',
          'parts-rev1.0.csv': 'Reference,Quantity,Description\nD1,1,LED red\n',
        },
        expect: [
          { file: 'guide.md', line: 3, words: '1.1' },
          { file: 'main.cpp', line: 1, words: '1.1' },
          { file: 'parts-rev1.0.csv', words: '1.0' },
        ],
      },
      {
        title: 'the guide was left behind',
        files: {
          'twicebuilt.yaml': 'format: 1\nrevision: "1.2"\n',
          'guide.md': '# Night light\n\nThis guide is for revision 1.1.\n\n## Fit the lamp\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: '1.1' }],
      },
      {
        title: 'code and board file of another revision',
        files: {
          'twicebuilt.yaml': 'format: 1\nrevision: "1.2"\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          'main.cpp': 'const char REVISION[] = "1.1";\nvoid setup() {}\n',
          'hardware/lamp-rev1.0.kicad_pcb': '(kicad_pcb)\n',
        },
        expect: [
          { file: 'main.cpp', line: 1, words: '1.1' },
          { file: 'hardware/lamp-rev1.0.kicad_pcb', words: '1.0' },
        ],
      },
      {
        title: 'two revisions, and no way to tell them apart',
        files: {
          'guide.md':
            '# Night light\n\nRevision A has no fuse.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the fuse\n\nOn revision B, solder F1.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'how to tell' }],
      },
    ],
  },
});

interface Own {
  readonly revision: string;
  readonly place: Place;
}

/** The settings' revision, else the only one that the guide speaks of. */
function ownRevision(build: Build, spoken: readonly Spoken[]): Own | null {
  const { revision, places } = build.settings;
  if (revision !== null) return { revision, place: places.revision ?? { kind: 'file', file: 'twicebuilt.yaml' } };
  const [first] = spoken;
  return first !== undefined && spoken.every((one) => same(one.revision, first.revision)) ? first : null;
}

/** Words about this very build that name another revision. */
function leftBehind(own: Own, spoken: readonly Spoken[]): Spoken[] {
  const named = spoken.filter(({ isOwn, revision }) => isOwn && comparable(revision, own.revision));
  const headings = named.filter(({ isHeading }) => isHeading);
  // Headings that name several revisions tell variants apart.
  const isOfVariants = headings.some(({ revision }) => same(revision, own.revision));
  return named.filter((one) => !same(one.revision, own.revision) && !(one.isHeading && isOfVariants));
}

function* against(build: Build, own: Own, spoken: readonly Spoken[], wrong: readonly Spoken[]): Iterable<FindingDraft> {
  const consequence = 'A builder cannot tell whether text, code and board belong together.';
  const draft = (mark: string, where: string, says: string, side: Place): FindingDraft => ({
    subjects: ['build:revision'],
    mark,
    sides: [side, own.place],
    message: `${where} ${says}; this build is revision ${own.revision}.`,
    consequence,
    remedy: 'Write the revision that is right in both places.',
  });
  const known = spoken.filter(({ revision }) => comparable(revision, own.revision));
  const [first] = known;
  if (first !== undefined && !known.some(({ revision }) => same(revision, own.revision))) {
    const all = [...new Set(known.map(({ revision }) => revision))];
    yield {
      ...draft('guide', 'The guide', `speaks of revision ${listed(all)} alone`, first.place),
      sides: [...known.slice(0, 4).map(({ place }) => place), own.place],
      basis: 'read',
    };
  } else {
    for (const { revision, place } of wrong) {
      yield {
        ...draft(`${place.file} ${place.quote}`, place.file, `speaks of revision ${revision} as its own`, place),
        basis: 'read',
      };
    }
  }
  for (const { revision, place } of revisionsBesideGuide(build)) {
    if (!comparable(revision, own.revision) || same(revision, own.revision)) continue;
    yield { ...draft(`${place.file} ${revision}`, place.file, `says ‘${place.quote}’`, place), basis: 'read' };
  }
  for (const { file, constants } of build.sources) {
    for (const { name, value, place } of constants) {
      if (name === null || !revisionName.test(name) || same(value, own.revision)) continue;
      yield draft(name, file, `says ${name} ${value}`, place);
    }
  }
  const listFiles = filesPlaying(build, 'parts', 'tools', 'wiring');
  const named = build.files.flatMap(({ path }) => {
    const revision = revisionInName(path, listFiles.has(path));
    return revision !== null && comparable(revision, own.revision) ? [{ path, revision }] : [];
  });
  for (const { path, revision } of named) {
    const isKept = named.some((one) => same(one.revision, own.revision) && endOf(one.path) === endOf(path));
    // An older one that is kept beside the one that counts says by its name what it is.
    if (isKept || same(revision, own.revision)) continue;
    yield draft(path, `The name of ${path}`, `says revision ${revision}`, { kind: 'file', file: path });
  }
}

function endOf(path: string): string {
  return /\.[^.]*$/.exec(path)?.[0].toLowerCase() ?? '';
}

/** Names of constants that hold the revision of the hardware; a bare VERSION is that of the program. */
const revisionName =
  /^(?:k?(?:BOARD|HW|HARDWARE|PCB|LAMP|DEVICE)?_?(?:REV|REVISION)|(?:BOARD|HW|HARDWARE|PCB)_?(?:VERSION|VER))$/i;

/** Board, schematic and production files are named after the revision that they draw. */
function revisionInName(path: string, isList: boolean): string | null {
  const name = path.slice(path.lastIndexOf('/') + 1).replace(/\.[^.]*$/, '');
  // A bare 'v2' of a list counts the list.
  if (isList)
    return /(?:^|[-_ .])rev(?:ision)?[-_ .]?(\d+(?:\.\d+)*|[a-h](?![a-z]))(?=[-_ .]|$)/i.exec(name)?.[1] ?? null;
  if (!/\.(?:kicad_pcb|kicad_sch|brd|sch|gbr|pcbdoc|schdoc)$/i.test(path) && !/gerber.*\.zip$/i.test(path)) return null;
  return (
    /(?:^|[-_ .])(?:rev(?:ision)?[-_ .]?|v)(\d+(?:[._]\d+)*|[a-h](?![a-z]))(?=[-_ .]|$)/i
      .exec(name)?.[1]
      ?.replaceAll('_', '.') ?? null
  );
}

/** Letters and numbers count different things. */
function comparable(a: string, b: string): boolean {
  return /\d/.test(a) === /\d/.test(b);
}

function same(a: string, b: string): boolean {
  return plain(a) === plain(b);
}

function plain(revision: string): string {
  return revision
    .trim()
    .toLowerCase()
    .replace(/^(?:v|rev(?:ision)?\.?\s*)(?=[\da-h])/, '')
    .replace(/(?:\.0)+$/, '');
}

/** The guide speaks of two revisions, and nothing says where a builder sees which one lies on the table. */
function* notTellable(build: Build, spoken: readonly Spoken[]): Iterable<FindingDraft> {
  const all = [...new Set(spoken.map(({ revision }) => plain(revision)))];
  const [first] = spoken;
  if (all.length < 2 || first === undefined) return;
  const words = [...filesPlaying(build, 'guide')].map((file) => build.texts.get(file)?.text ?? '').join('\n');
  if (tellWords.test(words)) return;
  yield {
    subjects: ['build:revision'],
    mark: 'tell',
    sides: spoken.slice(0, 5).map(({ place }) => place),
    basis: 'read',
    message: `The guide speaks of revisions ${listed([...new Set(spoken.map(({ revision }) => revision))])}, and does not say how to tell which one a builder holds.`,
    consequence: 'A builder guesses, and follows the steps of another board.',
    remedy: 'Say where the revision is printed, or what looks different.',
  };
}

const tellWords =
  /\b(?:silk\w*|printed|label(?:led|ed)?|marked|sticker|engraved|(?:tell|tells|recogni[sz]e|see|shows?|find|identify)\b[^.]{0,60}\b(?:revision|version|rev\b))|\b(?:revision|version)\b[^.]{0,40}\b(?:stands|is written|is shown|is found|can be seen)\b/iu;
