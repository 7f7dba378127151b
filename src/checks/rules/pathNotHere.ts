import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { placeInside } from '#prose/placeInside.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { groupedBy } from '../groupedBy.ts';

export const pathNotHere = defineCheck({
  id: 'path-not-here',
  title: 'A path of a file that the text names leads to a file of the folder.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A builder who is told to change a file has to find it first.',
  basis: 'common practice: paths are resolved against the folder',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const all = everySection(build).flatMap((section) => blocksOfWords(section).flatMap((block) => pathsIn(block)));
    const open = all.filter((place) => !isThere(place.quote, build));
    for (const [path, places] of groupedBy(open, ({ quote }) => quote)) {
      yield {
        subjects: [`file:${places[0]?.file ?? path}`],
        mark: `path-${path}`,
        sides: places.slice(0, 5),
        basis: 'read',
        message: `The text speaks of the file ${path}; the folder holds no such file.`,
        consequence: 'A builder looks for it in the folder, and does not know where else to look.',
        remedy: 'Correct the path; or, where the file lies elsewhere, say where it is to be had.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'files of the folder, from its root or from the page; files of the machine, of the web and of patterns',
        files: {
          'docs/guide.md':
            '# Lamp\n\n## Load it\n\nChange `lamp/config.h` and `firmware/lamp/config.h`, look at `../design/lid.svg`, edit `/etc/lamp/lamp.conf`, `~/lamp/own.txt`, `C:/lamp/own.txt`, `https://code.example/a/b.h`, `lamp/*.h` and `<lamp>/main.c`. Use 3.3/5 V. Run `make lamp/out.hex`.\n',
          'firmware/lamp/config.h': '#define LAMP 5\n',
          'design/lid.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>\n',
        },
      },
      {
        title: 'a file that the builder makes or downloads',
        files: {
          'guide.md':
            '# Lamp\n\n## Load it\n\nCreate a file `data/secret.txt` with your name. Fill your network into `data/net.h`. Save the log as `logs/first.txt`. From [the archive](https://code.example/lamp.zip) take `lamp/main.c`.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a name that was spelled wrong',
        files: {
          'guide.md': '# Lamp\n\n## Load it\n\nSet the colour in `frimware/config.h` and load it.\n',
          'firmware/config.h': '#define LAMP 5\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'frimware/config.h' }],
      },
      {
        title: 'a file of a program that is not here',
        files: {
          'guide.md': '# Lamp\n\n## Load it\n\nSet `LAMP_ON` to `no` in `boards/lamp/rules.mk`.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'boards/lamp/rules.mk' }],
      },
    ],
  },
});

const code = /(?<!`)`([^`\n]+)`(?!`)/gu;
const path = /^(?:\.{1,2}\/)*(?:[\w-][\w.-]*\/)+[\w-][\w.-]*\.[a-z][a-z0-9]{0,5}$/iu;
/** Words by which the file is made, or lies somewhere else for certain. */
const elsewhere =
  /\b(?:cop(?:y|ies)|renames?|call it|fill|ignored|create|creates|created|make a|new file|save|saved|stored?|written|writes|generated?|produces?|output|download\p{L}*|unzip|extract\p{L}*|clone|checkout|archive|will (?:be|find)|appears?)\b|\]\(https?:/iu;

function pathsIn(block: TextPlace): TextPlace[] {
  return [...block.quote.matchAll(code)].flatMap((match) => {
    const words = match[1]?.trim() ?? '';
    const line =
      block.quote
        .slice(0, match.index)
        .split(/[.!?]\s/u)
        .at(-1) ?? '';
    if (!path.test(words) || elsewhere.test(line)) return [];
    const at = match.index + match[0].indexOf(words);
    return [placeInside(block, at, at + words.length)];
  });
}

/** Whether a file lies there, from whatever folder the path starts. */
function isThere(written: string, { files }: Build): boolean {
  const wanted = written.replace(/^(?:\.{1,2}\/)+/u, '').toLowerCase();
  return files.some((file) => `/${file.path.toLowerCase()}`.endsWith(`/${wanted}`));
}
