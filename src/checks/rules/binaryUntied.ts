import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { Path, TextPlace } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { proseOf } from '../proseOf.ts';

export const binaryUntied = defineCheck({
  id: 'binary-untied',
  title: 'A firmware image says from which revision it was built, and that is the revision of the code beside it.',
  weight: 'slows',
  audience: 'publisher',
  why: 'An image of last year on the board of this year looks like a wiring fault.',
  basis: 'common practice: an image carries the revision of its source in its name or beside it',
  needs: { subject: ['files'], witnesses: [] },
  *run({ build }: Judged) {
    const code = revisionInCode(build);
    for (const { path } of build.files.filter((file) => isImage(build, file.path))) {
      const named = revisionIn(nameOf(path).replace(/\.[^.]+$/, ''));
      if (named !== null && code !== null && named !== code.revision) yield differs(path, named, code);
      else if (named === null && !isTold(build, path)) yield untied(path);
    }
  },
  examples: {
    passes: [
      {
        title: 'the revision in the name is that of the code',
        files: {
          'firmware/lamp-1.2.hex': ':00000001FF\n',
          'firmware/lamp.ino': 'const char REVISION[] = "1.2";\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'the text ties the image to a revision; data for the board is no image',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nLoad lamp.hex, built from version 1.2 of the code.\n',
          'firmware/lamp.hex': ':00000001FF\n',
          'firmware/lamp.ino': 'void setup() {}\nvoid loop() {}\n',
          'samples/tide.bin': 'data',
        },
      },
    ],
    fails: [
      {
        title: 'an image of an older revision than the code',
        files: {
          'firmware/lamp-v1.1.hex': ':00000001FF\n',
          'firmware/lamp.ino': '#define FW_VERSION "1.2"\nvoid setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'firmware/lamp.ino', line: 1, words: '1.1' }],
      },
      {
        title: 'an image of which nobody says what it is',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nLoad lamp.hex.\n',
          'firmware/lamp.hex': ':00000001FF\n',
          'firmware/lamp.ino': 'void setup() {}\nvoid loop() {}\n',
        },
        expect: [{ file: 'firmware/lamp.hex', words: 'no word' }],
      },
    ],
  },
});

/** Images for loading. A .bin may be any data: it counts beside code, or where it calls itself firmware. */
function isImage(build: Build, path: Path): boolean {
  if (/\.(?:hex|uf2)$/i.test(path)) return true;
  const folder = path.slice(0, path.lastIndexOf('/') + 1);
  const besideCode = build.sources.some(({ file }) => folder !== '' && file.startsWith(folder));
  return /\.bin$/i.test(path) && (/firmware|merged|bootloader/i.test(nameOf(path)) || besideCode);
}

function revisionIn(name: string): string | null {
  return /(?:^|[-_ .])(?:v|rev\.?|r)?[-_ ]?(\d+(?:[._]\d+)+)(?![\d.])/i.exec(name)?.[1]?.replaceAll('_', '.') ?? null;
}

interface Revision {
  readonly revision: string;
  readonly place: TextPlace;
}

/** The one revision that the code calls itself. */
function revisionInCode(build: Build): Revision | null {
  const pattern =
    /\b(?:fw_?|firmware_?|sketch_?|app_?|sw_?|software_?)?(?:version|revision|rev)\b(?:\[\])?\s*(?:=|\{)?\s*\(?["']v?(\d+(?:\.\d+)+)["']/gi;
  const found = build.sources.flatMap(({ file }) => {
    const source = build.texts.get(file);
    return source === undefined
      ? []
      : [...source.text.matchAll(pattern)].map((match) => ({
          revision: match[1] ?? '',
          place: placeOf(source, [match.index, match.index + match[0].length]),
        }));
  });
  const [first] = found;
  return first === undefined || found.some(({ revision }) => revision !== first.revision) ? null : first;
}

/** A line that names the image and a version or a hash. */
function isTold(build: Build, path: Path): boolean {
  const lines = [...proseOf(build)].flatMap(({ text }) => text.split(/[\r\n]+/));
  return lines.some(
    (line) =>
      line.includes(nameOf(path)) &&
      /\b(?:v?\d+\.\d+|version|revision|rev\.?|tag|commit|sha-?\d*|[0-9a-f]{7,64})\b/i.test(
        line.replace(nameOf(path), ''),
      ),
  );
}

function differs(path: Path, named: string, { revision, place }: Revision): FindingDraft {
  return {
    subjects: [`file:${path}`],
    sides: [{ kind: 'file', file: path }, place],
    message: `${path} calls itself ${named}; the code beside it is ${revision}.`,
    consequence: 'A builder who loads the image gets another program than the one that the guide was written for.',
    remedy: `Build the image from ${revision}, or leave it out.`,
  };
}

function untied(path: Path): FindingDraft {
  return {
    subjects: [`file:${path}`],
    sides: [{ kind: 'file', file: path }],
    weight: 'tidy',
    message: `${path} can be loaded as it is; no word says from which revision of the code it was built.`,
    consequence: 'Nobody can tell later whether it belongs to the code and the board of this guide.',
    remedy: 'Put the revision into its name, or name it with its revision in the guide.',
  };
}

function nameOf(path: Path): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
