import type { Build } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import { looksLike } from '#formats/roles/fileKind.ts';
import { isBesideTheProduct } from '#formats/roles/skipFile.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed } from '../say.ts';

export const fileNotNamed = defineCheck({
  id: 'file-not-named',
  title: 'The guide names the design files that belong to the build, or the folder that they lie in.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A file that no text speaks of is either needed and missed, or not needed and printed all the same.',
  basis: 'common practice of journals for open hardware: a table of files with their purpose',
  needs: { subject: ['files', 'steps'], witnesses: [] },
  *run({ build }) {
    const code = new Set(build.sources.map(({ file }) => file));
    const words = [...build.texts.values()]
      .filter(({ file }) => !code.has(file))
      .map(({ text }) => text)
      .join('\n');
    const open = build.files
      .map(({ path }) => path)
      .filter((path) => isDesign(build, path) && !isSpokenOf(words, path));
    if (open.length === 0) return;
    yield {
      subjects: ['build:files'],
      sides: open.slice(0, 5).map((file) => ({ kind: 'file', file })),
      message: `No text names ${listed(open)}.`,
      consequence: 'A builder cannot tell whether to print, cut or order from it.',
      remedy: 'Say in the guide what each file is for, in a table or where it is used; leave out what is not.',
    };
  },
  examples: {
    passes: [
      {
        title: 'by name, by folder, and in the parts list',
        files: {
          'guide.md':
            '# Night light\n\n## Print the parts\n\nPrint base.stl, and everything in the folder `lids`. Fit it.\n',
          'parts.csv': 'Reference,Quantity,Description,Maker part number\nMP3,1,"Knob, printed",models/knob.scad\n',
          'models/base.stl': 'solid a\nendsolid a\n',
          'models/knob.scad': 'cube(1);\n',
          'lids/round.stl': 'solid a\nendsolid a\n',
        },
      },
      {
        title: 'the model of a mesh that is named, and an old copy',
        files: {
          'guide.md': '# Night light\n\n## Print the parts\n\nPrint base.stl. Fit it.\n',
          'models/base.stl': 'solid a\nendsolid a\n',
          'models/base.scad': 'cube(1);\n',
          'old/foot.stl': 'solid a\nendsolid a\n',
        },
      },
    ],
    fails: [
      {
        title: 'a mesh of which nobody speaks',
        files: {
          'guide.md': '# Night light\n\n## Print the parts\n\nPrint base.stl. Fit it.\n',
          'models/base.stl': 'solid a\nendsolid a\n',
          'models/foot.stl': 'solid a\nendsolid a\n',
        },
        expect: [{ file: 'models/foot.stl', words: 'models/foot.stl' }],
      },
      {
        title: 'none of them',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder the LED and fit it.\n',
          'models/base.stl': 'solid a\nendsolid a\n',
          'models/lid.stl': 'solid a\nendsolid a\n',
        },
        expect: [{ file: 'models/base.stl', words: 'models/lid.stl' }],
      },
    ],
  },
});

function isDesign(build: Build, path: Path): boolean {
  if (!looksLike('design', path) || looksLike('picture', path) || /\.(?:svg|net|cir|pos|ods|odg)$/i.test(path))
    return false;
  const isList =
    build.partsLists.some(({ file }) => file === path) || build.connections.some(({ place }) => place.file === path);
  return !isList && !isBesideTheProduct(path);
}

/** By its name with or without the ending, or by one of the folders that it lies in. */
function isSpokenOf(words: string, path: Path): boolean {
  const text = words.toLowerCase();
  const name = path.slice(path.lastIndexOf('/') + 1).toLowerCase();
  const stem = name.replace(/\.[^.]+$/, '');
  if (
    text.includes(name) ||
    (stem.length >= 4 && new RegExp(`(?<![\\p{L}\\d])${escaped(stem)}(?![\\p{L}\\d])`, 'u').test(text))
  )
    return true;
  return path
    .toLowerCase()
    .split('/')
    .slice(0, -1)
    .some((folder) => {
      const it = escaped(folder);
      return new RegExp(
        `[\`'"“‘(/]${it}/?[\`'"”’)/]|(?<![\\p{L}\\d])${it}/|\\b(?:folder|directory) (?:called |named )?${it}\\b|\\b${it} (?:folder|directory)`,
        'u',
      ).test(text);
    });
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
