import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { firstRows, fittedRows, rowName } from '../partWords.ts';
import { listed } from '../say.ts';

export const amountWithoutUnit = defineCheck({
  id: 'amount-without-unit',
  title: 'A quantity that is no whole number has its unit.',
  weight: 'slows',
  audience: 'builder',
  why: 'A column that counts pieces in one row and shares of a roll in the next tells nobody how many to make.',
  basis: 'common practice: one column, one unit, or the unit beside the number; ISO 80000-1 on percentages',
  needs: { subject: ['parts'], witnesses: [] },
  *run({ build }) {
    const broken = fittedRows(build).flatMap((part) => {
      const n = fractionOf(part);
      return n === null ? [] : [{ part, n }];
    });
    if (broken.length === 0) return;
    const parts = broken.map(({ part }) => part);
    const one = parts.length === 1;
    yield {
      subjects: ['build:parts'],
      sides: firstRows(parts),
      basis: 'read',
      message: `${listed(parts.map(rowName))} ${one ? 'has a quantity' : 'have quantities'} of ${listed(broken.map(({ n }) => `${n}`))} without a unit, in a column that counts pieces.`,
      consequence: 'A builder cannot tell how many to buy or make, nor of what the number is a part.',
      remedy: `Write the pieces, and the share, length or weight with its unit into a column of its own.`,
    };
    yield* saidPercent(build, broken);
  },
  examples: {
    passes: [
      {
        title: 'whole pieces, and lengths and weights with their units',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv': 'Quantity,Description\n2.00,LED\n0.5 m,Wire\n1,Lid\n12.5 g,PLA filament\n',
        },
      },
      {
        title: 'a list in the guide',
        files: {
          'guide.md': '# Night light\n\n## Parts\n\n- 2 × LED\n- 0.4 m wire\n\n## Fit it\n\nSolder it.\n',
        },
      },
    ],
    fails: [
      {
        title: 'shares of a spool among pieces',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv': 'Quantity,Description\n2,LED\n0.15,Base\n0.05,Lid\n',
        },
        expect: [{ file: 'parts.csv', line: 3, words: '0.15 and 0.05' }],
      },
      {
        title: 'shares that a note calls percentages',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Note\n2,LED,\n,Printed parts,Quantity is the percentage of a spool\n0.15,Base,\n0.05,Lid,\n',
        },
        expect: [
          { file: 'parts.csv', line: 4, words: 'without a unit' },
          { file: 'parts.csv', line: 3, words: 'percentage' },
        ],
      },
    ],
  },
});

/** A number of pieces that is none: between two whole numbers, and not said to be rough. */
function fractionOf({ amount }: Part): number | null {
  if (amount.is === 'unknown') return null;
  const { n, unit, approximate } = amount.claims[0].value;
  return unit === 'pcs' && !approximate && !Number.isInteger(n) ? n : null;
}

const percentOfAmount = /\b(?:quantit(?:y|ies)|amounts?)\b[^,;|\n]*?\b(percent(?:age)?s?|per cent)\b/iu;

/** 'Quantity in percent', over numbers of which none reaches one. */
function* saidPercent(build: Build, broken: readonly { part: Part; n: number }[]): Iterable<FindingDraft> {
  for (const { file } of build.partsLists) {
    const source = build.texts.get(file);
    const match = percentOfAmount.exec(source?.text ?? '');
    const own = broken.filter(({ part, n }) => part.place.file === file && n < 1);
    const [first] = own;
    if (source === undefined || match === null || first === undefined || own.length < broken.length) continue;
    const place: TextPlace = placeOf(source, [match.index, match.index + match[0].length]);
    yield {
      subjects: ['build:parts'],
      mark: 'percent',
      sides: [place, first.part.cells.quantity ?? first.part.place],
      weight: 'tidy',
      basis: 'read',
      message: `The list calls quantities ‘${match[1]}’, and writes them as shares of one: ${listed(own.map(({ n }) => `${n}`))}.`,
      consequence: `Taken as written, ${first.n} percent is a hundredth of what is meant.`,
      remedy: `Write ${Math.round(first.n * 1000) / 10} %, or call the numbers shares.`,
    };
  }
}
