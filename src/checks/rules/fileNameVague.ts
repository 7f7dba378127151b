import type { Path } from '#core/place.ts';
import { looksLike } from '#formats/roles/fileKind.ts';
import { isBesideTheProduct } from '#formats/roles/skipFile.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed } from '../say.ts';

export const fileNameVague = defineCheck({
  id: 'file-name-vague',
  title: 'The names of design and code files say what they hold.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'Somebody who finds final2.stl in a download folder a week later knows neither part nor project.',
  basis: 'common practice: part, material and count in the name',
  needs: { subject: ['files'], witnesses: [] },
  *run({ build }) {
    const vague = build.files.map(({ path }) => path).filter((path) => isNamedByMaker(path) && isVague(path));
    if (vague.length === 0) return;
    yield {
      subjects: ['build:file-names'],
      sides: vague.slice(0, 5).map((file) => ({ kind: 'file', file })),
      message: `${vague.length === 1 ? 'The name' : 'The names'} ${listed(vague.map((path) => `‘${nameOf(path)}’`))} ${vague.length === 1 ? 'does' : 'do'} not say what the ${vague.length === 1 ? 'file holds' : 'files hold'}, or which of several is right.`,
      consequence: 'A builder prints or loads the wrong one.',
      remedy: 'Name each after what it is, such as base-petg-1x.stl, and leave out what is no longer used.',
    };
  },
  examples: {
    passes: [
      {
        title: 'names that say something, and photos as the camera names them',
        files: {
          'design/base-plate.stl': 'solid a\nendsolid a\n',
          'design/body-left.stl': 'solid a\nendsolid a\n',
          'firmware/main.cpp': 'void setup() {}\n',
          'photos/Untitled.jpg': 'x',
        },
      },
      {
        title: 'old copies that lie apart',
        files: { 'design/base.scad': 'cube(1);\n', 'old/base final2.scad': 'cube(1);\n' },
      },
    ],
    fails: [
      {
        title: 'final, and more final',
        files: { 'design/base_final.stl': 'solid a\nendsolid a\n', 'design/base_final2.stl': 'solid a\nendsolid a\n' },
        expect: [{ file: 'design/base_final.stl', words: 'base_final2.stl' }],
      },
      {
        title: 'the name that the program gave',
        files: { 'design/Untitled.scad': 'cube(1);\n', 'sketch_jan05a/sketch_jan05a.ino': 'void setup() {}\n' },
        expect: [{ file: 'design/Untitled.scad', words: 'sketch_jan05a.ino' }],
      },
    ],
  },
});

/** Names that programs give, and endings that tell nothing but an order in time. */
const vagueStems = [
  /^(?:untitled|unnamed|new(?: (?:folder|document|file|part))?|copy(?: of .*)?|part ?studio ?\d*|part ?\d+|body ?\d+|asm\d+|tmp|temp|file ?\d*|drawing ?\d+|export ?\d*|asdf\w*|final ?\d*|sketch_[a-z]{3}\d{1,2}[a-z]?)$/i,
  /(?:[-_ .](?:final ?\d*|final[-_ ]?final|newest|copy ?\d*)|\s?\(\d+\))$/i,
];

function isVague(path: Path): boolean {
  const stem = nameOf(path).replace(/\.[^.]+$/, '');
  return vagueStems.some((pattern) => pattern.test(stem));
}

function isNamedByMaker(path: Path): boolean {
  const isDesign = looksLike('design', path) && !/\.svg$/i.test(path);
  return (isDesign || /\.(?:ino|cpp|c|py|hex|bin|uf2|gcode|csv)$/i.test(path)) && !isBesideTheProduct(path);
}

function nameOf(path: Path): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
