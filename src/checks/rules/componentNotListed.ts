import type { Judged } from '#core/assembled.ts';
import type { TextPlace } from '#core/place.ts';
import { tokensOf } from '#notation/names.ts';
import { findQuantities } from '#notation/value.ts';
import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { fittedRows, isDetailedList, rowWords } from '../partWords.ts';
import { partsFileName, partsFiles } from '../say.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const componentNotListed = defineCheck({
  id: 'component-not-listed',
  title: 'Components that the text has a builder solder, by kind and value, stand in the parts list.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'What is soldered on only in some cases, or to mend something, is bought with the rest or fetched in a second parcel.',
  basis: 'common practice: kinds of components in the text, less those of the list',
  needs: { subject: ['parts'], witnesses: [] },
  *run(judged) {
    const { build } = judged;
    if (!isDetailedList(build)) return;
    const listed = new Set(fittedRows(build).flatMap((part) => tokensOf(`${rowWords(part)} ${part.section ?? ''}`)));
    for (const noun of nouns.filter((one) => !listed.has(one))) {
      if (fittedRows(build).some(({ refs }) => refs.some((ref) => ref.startsWith(letters[noun] ?? '?')))) continue;
      const found = everySection(build)
        .filter(({ role }) => role === 'step' || role === 'prose')
        .flatMap((section) => sentencesIn(section).flatMap((one) => asksFor(judged, noun, one.text, one.place)));
      const [first] = found;
      if (first === undefined) continue;
      yield {
        subjects: [`part:${noun}`],
        sides: [...found.slice(0, 4), ...partsFiles(build)],
        basis: 'read',
        message: `The text has a builder use a ${noun} (‘${first.quote}’); ${partsFileName(build)} lists none.`,
        consequence: 'A builder has to order it when everything else is done.',
        remedy: 'Add it to the list, marked with the case that it is for.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'listed by name or by reference, on a bought board, or spoken of without being soldered',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nSolder the 10 kΩ resistor. Fit the 100 nF capacitor. The module has pull-up resistors of 4.7 kΩ. Remove the 1 kΩ resistor from the module.\n',
          'parts.csv':
            'Reference,Quantity,Description\nR1,1,10k metal film\nD1,1,White LED\nC1,1,100n ceramic\nU1,1,Timer chip\nS1,1,Switch\n',
        },
      },
      {
        title: 'a slip of paper',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × lamp\n- 1 × cell\n\n## Fit it\n\nSolder a 10 kΩ resistor to the lamp.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a resistor against flicker',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nSolder D1.\n\n## When it flickers\n\nSolder a pull-up resistor (4k7) from the pin to the supply.\n',
          'parts.csv': 'Quantity,Description\n1,White LED\n1,Cell\n1,Lid\n1,Base\n1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'resistor' }],
      },
      {
        title: 'a capacitor in a step',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nSolder D1. Add a 100 µF capacitor across the supply.\n',
          'parts.csv': 'Quantity,Description\n1,White LED\n1,Cell\n1,Lid\n1,Base\n1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'capacitor' }],
      },
    ],
  },
});

const letters: Readonly<Record<string, string>> = { resistor: 'R', capacitor: 'C', inductor: 'L' };
const nouns = Object.keys(letters);
const kinds: Readonly<Record<string, string>> = {
  resistor: 'resistance',
  capacitor: 'capacitance',
  inductor: 'inductance',
};

/** An instruction to put in a component of that kind with its value. */
function asksFor({ facts }: Judged, noun: string, text: string, place: TextPlace): TextPlace[] {
  const asks = new RegExp(
    `^\\W*(?:(?:then|now|next|also|and|please|optionally),? )*(?:solder|add|fit|place|insert|connect|put|use|wire)\\b[^.]*\\b${noun}s?\\b`,
    'iu',
  );
  if (!asks.test(text) || !findQuantities(text).some(({ quantity }) => quantity.kind === kinds[noun])) return [];
  const isLeft = facts.actions.some(
    ({ told, place: at }) =>
      told === 'not' && at.file === place.file && at.span[0] >= place.span[0] && at.span[0] < place.span[1],
  );
  return isLeft ? [] : [place];
}
