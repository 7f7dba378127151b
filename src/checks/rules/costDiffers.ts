import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { Place } from '#core/place.ts';
import type { Money } from '#core/quantity.ts';
import { placeOf } from '#core/sourceText.ts';
import { parseMoney } from '#notation/money.ts';
import { type PricedRow, type PriceSum, sumPrices } from '#notation/sumPrices.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { isRealPart } from '../realParts.ts';
import { partsFileName, partsFiles } from '../say.ts';

export const costDiffers = defineCheck({
  id: 'cost-differs',
  title: 'The cost in the text is the sum of the list.',
  weight: 'slows',
  audience: 'publisher',
  why: 'A figure that was written once and never again is the first thing that readers check.',
  basis: 'common practice: the sum of price times quantity, against every total in the text',
  needs: { subject: ['parts'], witnesses: [] },
  *run(judged) {
    const sum = sumPrices(pricedRows(judged.build));
    const [only, another] = sum.totals;
    if (only === undefined || another !== undefined || sum.priced < 3) return;
    yield* totalRow(judged.build, only, sum);
    yield* inText(judged, only, sum);
  },
  examples: {
    passes: [
      {
        title: 'a total to the cent, a rounded one, an upper limit, and money that is no total',
        files: {
          'guide.md':
            '# Night light\n\nAll parts together cost 9.60 EUR. Reckon with about 10 EUR in all. Everything costs less than 20 EUR. Postage costs 4 EUR. The lamp alone costs 2.00 EUR. A finished lamp in a shop costs 80 EUR.\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Price,Currency\nD1,3,White LED,2.00,EUR\nR1,6,Resistor,0.10,EUR\n,1,Case,3.00,EUR\nTotal,,,9.60,EUR\n',
        },
      },
      {
        title: 'a list with prices for some rows only proves a total too low, never too high',
        files: {
          'guide.md': '# Night light\n\nThe parts cost 30 EUR in all.\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Price,Currency\nD1,3,White LED,2.00,EUR\nR1,6,Resistor,0.10,EUR\n,1,Case,3.00,EUR\n,1,Supply,,\n',
        },
      },
    ],
    fails: [
      {
        title: 'the text still has the old total, and so has the last row',
        files: {
          'guide.md': '# Night light\n\nAll parts together cost 7.10 EUR.\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Price,Currency\nD1,3,White LED,2.00,EUR\nR1,6,Resistor,0.10,EUR\n,1,Case,3.00,EUR\nTotal,,,7.10,EUR\n',
        },
        expect: [
          { file: 'guide.md', line: 3, words: '7.10' },
          { file: 'parts.csv', line: 5, words: '7.10' },
        ],
      },
      {
        title: 'less than the list comes to',
        files: {
          'guide.md': '# Night light\n\nThe parts cost about 5 € in total.\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Unit price (€)\nD1,3,White LED,2.00\nR1,6,Resistor,0.10\n,1,Case,3.00\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: '5' }],
      },
    ],
  },
});

function pricedRows(build: Build): PricedRow[] {
  return build.parts.filter(isRealPart).map(({ price, amount, fitted }) => ({
    price,
    fitted,
    amounts: amount.is === 'unknown' ? [] : amount.claims.slice(0, 1).map(({ value }) => value),
  }));
}

/** The last row of a list, where it states the one total. */
function* totalRow(build: Build, sum: Money, { priced, rows }: PriceSum): Iterable<FindingDraft> {
  const [list, another] = build.partsLists;
  const source = list === undefined || another !== undefined ? undefined : build.texts.get(list.file);
  if (source === undefined || priced < rows || /\.(?:md|markdown)$/iu.test(source.file)) return;
  const lines = [...source.text.matchAll(/^[ \t,;"|]*(?:grand )?total\b[^\n]*$/gimu)];
  const [line] = lines;
  if (line === undefined || lines.length > 1) return;
  const sums = line[0]
    .split(/[,;\t|](?=\D|\d)/u)
    .map((cell) => parseMoney(cell.replace(/"/gu, '').trim(), sum.currency))
    .filter((money) => money !== null && money.amount > 0);
  const stated = sums.at(-1);
  if (stated === undefined || sums.length > 1 || stated === null || agrees(stated, sum, 0.005 * rows + 0.005)) return;
  const start = line.index;
  yield differs([placeOf(source, [start, start + line[0].trimEnd().length])], stated, sum, 'The row of the total says');
}

const talksOfTotal =
  /\b(?:all (?:the )?parts|all (?:the )?components|in total|total|altogether|in all|everything|whole build|bill of materials|the parts cost|parts together)\b/iu;
const otherTalk = /\b(?:postage|shipping|carriage|tools?|each|per|shop|instead|kit|saved?|tax)\b/iu;
const upTo = /\b(?:less than|under|below|at most|up to|no more than|max(?:imum)?)\b/iu;
const roughly = /\b(?:about|around|roughly|approximately|approx|ca|some)\b|~|≈/iu;
const money =
  /(?:[€$£¥]|(?<![A-Z])[A-Z]{3}) ?\d[\d.,]*\d|(?:[€$£¥]|(?<![A-Z])[A-Z]{3}) ?\d|(?<![\d.,])\d[\d.,]*(?: ?[€£$]| [A-Z]{3}(?![A-Z]))/gu;

function* inText({ build }: Judged, sum: Money, { priced, rows }: PriceSum): Iterable<FindingDraft> {
  for (const { words, place } of spokenTexts(build)) {
    for (const { text, start } of sentencesOf(words)) {
      const found = [...text.matchAll(money)];
      const [only] = found;
      const stated = only === undefined || found.length > 1 ? null : parseMoney(only[0]);
      if (
        only === undefined ||
        stated === null ||
        !talksOfTotal.test(text) ||
        !/cost|total|pay|spend|price/iu.test(text)
      )
        continue;
      if (stated.currency !== null && sum.currency !== null && stated.currency !== sum.currency) continue;
      const before = text.slice(0, only.index);
      if (otherTalk.test(before) || isCompatible(stated, sum, priced === rows, before, only[0])) continue;
      const from = start + only.index;
      yield differs(
        [placeInside(place, from, from + only[0].length), ...partsFiles(build)],
        stated,
        sum,
        'The text says',
        build,
      );
    }
  }
}

/** Whether a total of the text may be the sum of the list; it may include packs and postage where it is no exact one. */
function isCompatible(stated: Money, sum: Money, isWhole: boolean, before: string, written: string): boolean {
  if (upTo.test(before)) return sum.amount <= stated.amount * 1.02;
  const isExact = /[.,]\d{2}(?!\d)/u.test(written) && !roughly.test(before);
  if (isExact)
    return (!isWhole && stated.amount > sum.amount) || agrees(stated, sum, Math.max(0.05, sum.amount * 0.01));
  return stated.amount >= sum.amount * 0.8;
}

function agrees(a: Money, b: Money, tolerance: number): boolean {
  return Math.abs(a.amount - b.amount) <= tolerance;
}

function differs(sides: Place[], stated: Money, sum: Money, who: string, build?: Build): FindingDraft {
  const currency = sum.currency ?? stated.currency ?? '';
  const is = `${sum.amount.toFixed(2)} ${currency}`.trim();
  return {
    subjects: ['build:cost'],
    mark: stated.amount.toFixed(2),
    sides,
    basis: 'read',
    message: `${who} ${`${stated.amount.toFixed(2)} ${currency}`.trim()}; the prices ${build === undefined ? 'of its rows' : `in ${partsFileName(build)}`} come to ${is}.`,
    consequence: 'A reader who adds up the list trusts neither figure.',
    remedy: `Write ${is}, or correct the prices.`,
  };
}
