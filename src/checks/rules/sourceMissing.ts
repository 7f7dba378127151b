import type { Path } from '#core/place.ts';
import { defineCheck } from '../defineCheck.ts';
import table from '../knowledge/fileForms.json';
import { proseOf } from '../proseOf.ts';
import { listed } from '../say.ts';

export const sourceMissing = defineCheck({
  id: 'source-missing',
  title: 'Files that are made for a machine come with the files that they were made from.',
  weight: 'slows',
  audience: 'publisher',
  words: 'English',
  why: 'A model that can only be printed cannot be fitted to another screw, and a board that can only be ordered cannot be mended.',
  basis: 'Open Source Hardware Definition 1.0, 2: documentation in the preferred form for making changes',
  needs: { subject: ['files'], witnesses: [] },
  *run({ build }) {
    const words = proseOf(build)
      .map(({ text }) => text)
      .join('\n');
    for (const { what, made, editable } of table.kinds) {
      const files = build.files
        .map(({ path }) => path)
        .filter((path) => isOf(path, made) || isGerberArchive(path, what));
      if (files.length === 0 || build.files.some(({ path }) => isOf(path, editable)) || isExplained(words, files))
        continue;
      yield {
        subjects: [`file:${files[0] ?? what}`],
        mark: what,
        sides: files.slice(0, 5).map((file) => ({ kind: 'file', file })),
        message: `${files.length === 1 ? `${files[0]} is` : `${files.length} files (${listed(files.map(nameOf))}) are`} made for a machine; the folder holds no file from which ${files.length === 1 ? 'it' : 'they'} could be changed, and no word says where one is.`,
        consequence: `Nobody can fit the ${what} to other parts, or mend a fault in it.`,
        remedy: `Add what the ${what} was made from, beside these files; or say where it is, or that it is lost.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the model beside the mesh, and the code beside the image',
        files: {
          'guide.md': '# Night light\n\n## Print the base\n\nPrint it.\n',
          'design/base.stl': 'solid base\nendsolid base\n',
          'design/source/lamp.scad': 'cube(10);\n',
          'firmware/lamp.hex': ':00000001FF\n',
          'firmware/lamp.ino': 'void setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'a sentence says why there is none',
        files: {
          'guide.md':
            '# Night light\n\n## Print the base\n\nPrint it. The editable model is lost; measure the mesh to change it.\n',
          'design/base.stl': 'solid base\nendsolid base\n',
        },
      },
    ],
    fails: [
      {
        title: 'two meshes and no model',
        files: {
          'guide.md': '# Night light\n\n## Print the base\n\nPrint both parts.\n',
          'design/base.stl': 'solid base\nendsolid base\n',
          'design/lid.stl': 'solid lid\nendsolid lid\n',
        },
        expect: [{ file: 'design/base.stl', words: '2 files' }],
      },
      {
        title: 'an image of firmware without its code',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nLoad lamp.hex.\n',
          'firmware/lamp.hex': ':00000001FF\n',
        },
        expect: [{ file: 'firmware/lamp.hex', words: 'lamp.hex' }],
      },
    ],
  },
});

function isOf(path: Path, endings: readonly string[]): boolean {
  return endings.includes(nameOf(path).split('.').at(-1)?.toLowerCase() ?? '') && nameOf(path).includes('.');
}

function isGerberArchive(path: Path, what: string): boolean {
  return what === 'circuit board' && /gerber[^/]*\.(?:zip|rar|7z)$/i.test(path);
}

function nameOf(path: Path): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

/** A sentence that speaks of the source of these files, whether it is elsewhere or nowhere. */
function isExplained(words: string, files: readonly Path[]): boolean {
  const source =
    /\b(?:editable|original|source|native|cad)\b[^.\n]{0,40}\b(?:model|file|files|design|code|drawing)s?\b|\b(?:model|design|code)\b[^.\n]{0,30}\bsource\b/i;
  const sayings = words.split(/(?<=[.!?])\s|\n/).filter((sentence) => source.test(sentence));
  return (
    sayings.some((sentence) =>
      /https?:|\b(?:lost|not available|unavailable|no longer|none|not (?:shared|published|included)|request|lies?|found|kept)\b/i.test(
        sentence,
      ),
    ) ||
    // A model that is remixed from elsewhere has its source there.
    words.split(/\n/).some((line) => /https?:/.test(line) && files.some((file) => line.includes(nameOf(file))))
  );
}
