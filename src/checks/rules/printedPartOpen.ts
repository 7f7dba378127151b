import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import { tokensOf } from '#notation/names.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { guideWords } from '../guideWords.ts';
import { firstRows, fittedRows, rowName, rowWords } from '../partWords.ts';
import { listed } from '../say.ts';

export const printedPartOpen = defineCheck({
  id: 'printed-part-open',
  title: 'Every printed part names its file, and the guide how to print it.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A printed part cannot be bought: without its file nobody can make it, and material and layer decide whether it fits.',
  basis: 'common practice: file, material, layer height and supports for printed parts',
  needs: { subject: ['guide', 'parts'], witnesses: [] },
  *run({ build }) {
    const printed = fittedRows(build).filter(isPrinted);
    if (printed.length === 0) return;
    // A page on printing elsewhere may hold the files and say how.
    if (leadsToPrinting(build)) return;
    const without = printed.filter((part) => !namesFile(part, build));
    const open = openSettings(build, printed);
    const elsewhere = printed.filter((part) => !without.includes(part) && !holdsFile(part, build));
    if (without.length > 0) yield fileOpen(without);
    if (elsewhere.length > 0) yield fileElsewhere(elsewhere);
    if (open.length > 0) yield settingsOpen(printed, open);
  },
  examples: {
    passes: [
      {
        title: 'files by name, by link or beside the guide, and settings in the text',
        files: {
          'guide.md':
            '# Night light\n\n## Print the case\n\nPrint all parts in PETG with layers of 0.2 mm, without supports.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,"Base, 3D printed",design/base.stl\n1,3D-printed lid,\n1,Printed knob (knob.stl),\n1,Printed circuit board,\n1,"Capacitor, printed 104",\n',
          'design/base.stl': 'solid base',
          'design/case-lid.stl': 'solid lid',
        },
      },
      {
        title: 'nothing is printed',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nPrint the template on paper.\n',
          'parts.csv': 'Quantity,Description\n1,White LED\n1,Lid\n1,Printed manual\n',
        },
      },
    ],
    fails: [
      {
        title: 'no file and no settings',
        files: {
          'guide.md': '# Night light\n\n## Close the case\n\nPress the lid on.\n',
          'parts.csv': 'Quantity,Description\n1,White LED\n1,3D-printed base\n1,3D-printed lid\n',
        },
        expect: [
          { file: 'parts.csv', line: 3, words: 'no file' },
          { file: 'parts.csv', line: 3, words: 'material' },
        ],
      },
      {
        title: 'the file is there, the layers are not',
        files: {
          'guide.md': '# Night light\n\n## Print the case\n\nPrint the base in PLA.\n',
          'parts.csv': 'Quantity,Description,Link\n1,White LED,\n1,3D-printed base,design/base.stl\n',
          'design/base.stl': 'solid base',
        },
        expect: [{ file: 'parts.csv', line: 3, words: 'layer height' }],
      },
      {
        title: 'the files lie elsewhere, and the page on printing is gone',
        files: {
          'guide.md':
            '# Night light\n\nSee [the printing page](printing.md).\n\n## Close the case\n\nPress the lid on. Layers of 0.2 mm, PLA.\n',
          'parts.csv':
            'Quantity,Description,Note\n1,White LED,\n1,3D-printed base,https://models.example/lamp/tree/main/case\n',
        },
        expect: [{ file: 'parts.csv', line: 3, words: 'elsewhere' }],
      },
    ],
  },
});

function isPrinted(part: Part): boolean {
  const words = `${part.description} ${part.section ?? ''} ${part.supplier ?? ''}`;
  return (
    /\b3-?d[- ]?print/iu.test(words) ||
    /\b(?:own print|self-printed)\b/iu.test(words) ||
    (/\bprint(?:ed|able)\b(?! (?:circuit|board|wiring|manual|\d))/iu.test(words) &&
      /\b(?:PLA|PETG|ABS|ASA|TPU|nylon|resin|filament|knob|case|lid|base|bracket|mount|holder|enclosure|housing)\b/iu.test(
        words,
      ))
  );
}

const modelFile = /[\p{L}\d_-]+\.(?:stl|step|stp|3mf|obj|scad|f3d|fcstd|amf)\b/iu;

/** By name in its row, by a link, or by a model in the folder that is named like it. */
function namesFile(part: Part, build: Build): boolean {
  const words = `${rowWords(part)} ${Object.values(part.cells)
    .map((cell) => cell?.quote ?? '')
    .join(' ')}`;
  const isLinked = part.links.some(({ kind }) => kind === 'file' || kind === 'other');
  return modelFile.test(words) || isLinked || isNamedLikeModel(part, build);
}

function isNamedLikeModel(part: Part, build: Build): boolean {
  const name = tokensOf(part.description);
  return build.files.some(({ path }) => {
    if (!modelFile.test(path)) return false;
    const stem = tokensOf((path.split('/').at(-1) ?? '').replace(/\.\w+$/u, '').replace(/[_-]/gu, ' '));
    return stem.some((word) => word.length > 2 && name.includes(word));
  });
}

/** Whether the folder may hold the file: nothing in it is a model, and the row's only pointer leads away, where it does not. */
function holdsFile(part: Part, build: Build): boolean {
  const pointers = part.links.filter(({ kind }) => kind === 'file' || kind === 'other');
  return (
    build.files.some(({ path }) => modelFile.test(path)) ||
    pointers.length === 0 ||
    pointers.some(({ url }) => !/^https?:/iu.test(url))
  );
}

const linkToPrinting =
  /\[[^\]]*(?:stl|3mf|3d|models?|print|cad|design files?)[^\]]*\]\(([^)\s]*)|\]\(([^)\s]*(?:stl|3mf|print|model|cad)[^)\s]*)\)/giu;

/** A link to words or files about printing that leads somewhere: elsewhere, or to what the folder holds. */
function leadsToPrinting(build: Build): boolean {
  return [...build.texts.values()].some(({ text }) =>
    [...text.matchAll(linkToPrinting)].some(([, named, spelled]) => {
      const url = (named ?? spelled ?? '').split(/[?#]/u)[0] ?? '';
      const end = decodedPath(url).replace(/^(?:\.{0,2}\/)+/u, '');
      return /^https?:/iu.test(url) || end === '' || build.files.some(({ path }) => path.endsWith(end));
    }),
  );
}

function decodedPath(url: string): string {
  return url.replace(/%20/gu, ' ');
}

/** What the guide and the rows leave open. */
function openSettings(build: Build, printed: readonly Part[]): string[] {
  const guide = guideWords(build);
  const all = [guide, ...printed.map(rowWords)].join('\n');
  return [
    ...(/\b(?:PLA|PETG|PET-G|ABS|ASA|TPU|nylon|polycarbonate|resin)\b/iu.test(all) ? [] : ['material']),
    ...(/\blayers?\b|\blayer height\b|\bresolution\b/iu.test(all) ? [] : ['layer height']),
  ];
}

function fileOpen(parts: readonly Part[]): FindingDraft {
  return {
    subjects: ['build:parts'],
    mark: 'files',
    sides: firstRows(parts),
    basis: 'read',
    message: `${listed(parts.map(rowName))} ${parts.length === 1 ? 'is' : 'are'} to be printed, and no file is named for ${parts.length === 1 ? 'it' : 'them'}.`,
    consequence: 'A builder can neither buy nor print the part.',
    remedy: 'Put the file into the folder and its path into the row.',
  };
}

function fileElsewhere(parts: readonly Part[]): FindingDraft {
  return {
    subjects: ['build:parts'],
    mark: 'elsewhere',
    sides: firstRows(parts),
    basis: 'read',
    message: `${listed(parts.map(rowName))} ${parts.length === 1 ? 'is' : 'are'} to be printed; the folder holds no file for ${parts.length === 1 ? 'it' : 'them'}, only an address elsewhere.`,
    consequence: 'A builder prints what lies at that address on that day, or finds it gone.',
    remedy: 'Put the files that were printed into the folder; keep the address for later versions.',
  };
}

function settingsOpen(parts: readonly Part[], open: readonly string[]): FindingDraft {
  return {
    subjects: ['build:parts'],
    mark: 'settings',
    sides: firstRows(parts),
    basis: 'read',
    message: `${parts.length} ${parts.length === 1 ? 'part is' : 'parts are'} to be printed; neither list nor guide gives the ${listed(open)}.`,
    consequence: 'A builder prints with other settings, and the parts are weak or do not fit.',
    remedy: 'Write one sentence with material, layer height, supports and direction.',
  };
}
