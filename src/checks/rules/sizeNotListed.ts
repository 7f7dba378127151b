import { tokensOf } from '#notation/names.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck } from '../defineCheck.ts';
import { fittedRows, rowName, rowWords } from '../partWords.ts';
import { listed, stepName } from '../say.ts';
import { stepSentences } from '../stepSentences.ts';

export const sizeNotListed = defineCheck({
  id: 'size-not-listed',
  title: 'Where steps choose between sizes, the list holds them.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: '‘The shorter screws’ of a list with one kind of screw are a kind that nobody has bought, or left over from an older list.',
  basis: 'common practice: comparatives of the steps against the rows of that kind',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run({ build }) {
    const rows = fittedRows(build);
    if (rows.length < 3) return;
    for (const { section, text, place } of stepSentences(build)) {
      const found = choiceIn(text);
      if (found === null) continue;
      const same = rows.filter((part) => tokensOf(part.description).some((word) => word.startsWith(found.noun)));
      const [only, another] = same;
      if (only === undefined || another !== undefined || severalInOne.test(rowWords(only))) continue;
      yield {
        subjects: [`part:${only.id}`, `step:${section.id}`],
        mark: found.noun,
        sides: [placeInside(place, found.from, found.to), only.place],
        basis: 'read',
        message: `${stepName(build, section.id)} takes ‘${found.words}’; the list holds ${rowName(only)} and no other ${listed([`${found.noun}s`])}.`,
        consequence: 'A builder looks for a second size that is not there, or has bought too few.',
        remedy: 'Name the part as the list does, or add the other size to the list.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'both sizes are listed, in two rows or in one',
        files: {
          'guide.md':
            '# Night light\n\n## Close the case\n\nDrive the shorter screws into the lid. Put the smaller of the two washers below.\n',
          'parts.csv': 'Quantity,Description\n4,M3 × 8 screw\n4,M3 × 16 screw\n1,"Washers, 3 mm and 4 mm"\n1,Lid\n',
        },
      },
      {
        title: 'a lead and a wire that are longer by themselves',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nThe longer lead of D1 is plus. Solder the longer wire to it.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\nW1,1 m,Wire\nMP1,4,M3 × 8 screw\n',
        },
      },
    ],
    fails: [
      {
        title: 'the shorter screws of one kind',
        files: {
          'guide.md': '# Night light\n\n## Close the case\n\nDrive the shorter screws into the lid.\n',
          'parts.csv': 'Quantity,Description\n8,M3 × 8 screw\n1,White LED\n1,Lid\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'the shorter screws' }],
      },
      {
        title: 'two sizes out of a bag that holds one',
        files: {
          'guide.md':
            '# Night light\n\n## Close the case\n\nTake two standoffs (the larger of the two sizes) out of the bag.\n',
          'parts.csv': 'Quantity,Description\n4,Standoff M3 × 10\n1,White LED\n1,Lid\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'the larger of the two sizes' }],
      },
    ],
  },
});

const nouns = 'screw|bolt|standoff|spacer|nut|washer|insert|magnet|header|spring|bearing|hinge';
const comparative = '(?:small|larg|bigg|short|long|thinn|thick|narrow|wid)er';
const choice = new RegExp(
  `\\bthe ${comparative} (?:(?:ones? )?of the (?:two|three)(?: (?:sizes|lengths|kinds|types|sorts))?|(?:[\\p{L}\\d.]+ )?(?:${nouns})s?)\\b|\\b(?:two|three|both) (?:different )?(?:sizes|lengths) of (?:[\\p{L}\\d.]+ )?(?:${nouns})s?\\b`,
  'iu',
);
const noun = new RegExp(`\\b(${nouns})s?\\b`, 'giu');
/** A row that holds more than one size. */
const severalInOne =
  /\b(?:assort\w*|sets?|kits?|various|mixed|sizes|lengths)\b|\d[^·]*?\b(?:and|or)\b[^·]*?\d|\d ?\/ ?\d/iu;

function choiceIn(text: string): { words: string; noun: string; from: number; to: number } | null {
  const match = choice.exec(text);
  if (match === null) return null;
  const to = match.index + match[0].length;
  const named = [...text.slice(0, to).matchAll(noun)].at(-1)?.[1];
  return named === undefined ? null : { words: match[0], noun: named.toLowerCase(), from: match.index, to };
}
