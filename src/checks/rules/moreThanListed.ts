import type { Judged } from '#core/assembled.ts';
import type { Part } from '#core/part.ts';
import type { Quantity } from '#core/quantity.ts';
import { findQuantities, formatQuantity, sameQuantity } from '#notation/value.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { type CannotTell, defineCheck, type FindingDraft } from '../defineCheck.ts';
import { type PartKind, partKind } from '../partKind.ts';
import { fittedRows } from '../partWords.ts';
import { partsFileName, partsFiles, stepName } from '../say.ts';

export const moreThanListed = defineCheck({
  id: 'more-than-listed',
  title: 'The list holds as many parts of a value as a step asks for.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Four resistors in the text and three in the list mean another parcel.',
  basis: 'common practice: ‘4 × 10 kΩ’ in a step against the sum of the rows of that value',
  needs: { subject: ['steps', 'values in the parts list'], witnesses: [] },
  *run(judged) {
    for (const spoken of spokenTexts(judged.build)) {
      if (spoken.step === null) continue;
      for (const { text, start } of sentencesOf(spoken.words)) {
        for (const { count, quantity, from, to } of countedValues(text)) {
          yield* compare(judged, count, quantity, placeInside(spoken.place, start + from, start + to), spoken.step);
        }
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'as many as listed, fewer, and numbers that count something else',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistors\n\nSolder four 10k resistors. Take 2 × 330 Ω. Step 4 330 Ω. Use 5 10k resistors if you like.\n',
          'parts.csv':
            'Reference,Quantity,Value,Description\n"R1, R2, R3, R4",4,10k,Resistor\n"R5, R6, R7",3,330 Ω,Resistor\n',
        },
      },
      {
        title: 'a row without a value may be the one',
        outcome: 'cannot-tell',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\nSolder four 10k resistors.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\n"R1, R2",2,10k,Resistor\n"R3, R4",2,,Resistor\n',
        },
      },
    ],
    fails: [
      {
        title: 'four in the step, three in the list',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\nSolder four 10k resistors.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\n"R1, R2, R3",3,10k,Resistor\nR4,1,330 Ω,Resistor\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '3' }],
      },
      {
        title: 'a value that the list does not hold',
        files: {
          'guide.md': '# Night light\n\n## Fit the capacitors\n\nSolder 2 × 100 nF beside the chip.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\n"C1, C2",2,10 nF,Capacitor\nR1,1,10k,Resistor\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'none' }],
      },
    ],
  },
});

const numbers: Readonly<Record<string, number>> = {
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
};
const before = new RegExp(`(?:^|[\\s(])(\\d{1,2}|${Object.keys(numbers).join('|')})( ?[x×]| pieces of)? $`, 'iu');
const nounAfter = /^[ -]?(?:ohm[ -])?(?:resistors|capacitors|caps|inductors)\b/iu;
const otherTalk =
  /\b(?:or|if|instead|parallel|series|total|spare|optional|optionally|at least|up to|measures?|reads?|equals?|steps?)\b/iu;

interface CountedValue {
  readonly count: number;
  readonly quantity: Quantity;
  readonly from: number;
  readonly to: number;
}

/** '4 × 10k' and 'four 10k resistors'; a bare '4 10k' counts nothing. */
function countedValues(sentence: string): CountedValue[] {
  if (otherTalk.test(sentence)) return [];
  return findQuantities(sentence).flatMap(({ quantity, start, end }) => {
    const match = before.exec(sentence.slice(0, start));
    if (match === null || kindOf(quantity) === null) return [];
    if (match[2] === undefined && !nounAfter.test(sentence.slice(end))) return [];
    const count = numbers[(match[1] ?? '').toLowerCase()] ?? Number(match[1]);
    return count < 2 ? [] : [{ count, quantity, from: start - match[0].trimStart().length, to: end }];
  });
}

function kindOf({ kind }: Quantity): PartKind | null {
  if (kind === 'resistance') return 'resistor';
  if (kind === 'capacitance') return 'capacitor';
  return kind === 'inductance' ? 'inductor' : null;
}

function* compare(
  { build }: Judged,
  count: number,
  quantity: Quantity,
  place: FindingDraft['sides'][number],
  step: string,
): Iterable<FindingDraft | CannotTell> {
  const rows = fittedRows(build).filter((part) => partKind(part) === kindOf(quantity));
  const held = rows.reduce((sum, part) => sum + (hasValue(part, quantity) ? (piecesOf(part) ?? count) : 0), 0);
  if (held >= count) return;
  const value = formatQuantity(quantity.kind, quantity.si);
  if (rows.some(({ value }) => value.is === 'unknown')) {
    yield { cannotTell: `some rows give no value, so that ${value} may be among them` };
    return;
  }
  const same = rows.filter((part) => hasValue(part, quantity));
  yield {
    subjects: ['build:parts'],
    mark: value.replace(/\s/gu, ''),
    sides: [place, ...(same.length > 0 ? same.map(({ place }) => place) : partsFiles(build))],
    basis: 'read',
    message: `The step ${stepName(build, step)} takes ${count} of ${value}; ${partsFileName(build)} holds ${held === 0 ? 'none' : held}.`,
    consequence: 'A builder who has bought what is listed cannot finish the step.',
    remedy: 'Correct the number in the step, or the list.',
  };
}

function hasValue(part: Part, quantity: Quantity): boolean {
  return part.value.is !== 'unknown' && part.value.claims.some(({ value }) => sameQuantity(value, quantity));
}

function piecesOf({ amount }: Part): number | null {
  if (amount.is === 'unknown') return null;
  const { n, unit, approximate } = amount.claims[0].value;
  return unit === 'pcs' && !approximate ? n : null;
}
