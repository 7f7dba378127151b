import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import { type FoundMoney, findMoney } from '#notation/findMoney.ts';
import { parseMoney } from '#notation/money.ts';
import { costsOf, type PriceRange, rangeOfPrices } from '#notation/rangeOfPrices.ts';
import type { PricedRow } from '#notation/sumPrices.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { promisesInFront } from '../promisesInFront.ts';
import { isRealPart } from '../realParts.ts';
import { partsFileName } from '../say.ts';

export const costDiffers = defineCheck({
  id: 'cost-differs',
  title: 'The cost in the text is the sum of the list.',
  weight: 'slows',
  audience: 'publisher',
  why: 'A figure that was written once and never again is the first thing that readers check.',
  basis: 'common practice: the sum of price times quantity, against every total in the text',
  needs: { subject: ['parts'], witnesses: [] },
  *run(judged) {
    const sum = rangeOfPrices(judged.build.parts.filter(isRealPart).map(pricedRow));
    if (sum === null || sum.priced < 3) return;
    yield* totalRow(judged.build, sum);
    yield* inText(judged.build, sum);
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
      {
        title: 'a length that is priced whole or by the metre, a range, and a rough total with full packs',
        files: {
          'guide.md':
            '# Night light\n\nTwo hours, and 10.00 EUR for all parts. The parts cost 8 to 12 euros. With full packs, reckon with about 25 EUR in total.\n\n| Cost | 9.60 EUR |\n| --- | --- |\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Price,Currency\nD1,3,White LED,2.00,EUR\n,1,Case,3.00,EUR\nW1,60 cm,Hook-up wire,1.00,EUR\n',
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
      {
        title: 'a sum of another age, with a length in the list',
        files: {
          'guide.md':
            '# Night light\n\nTwo hours, and 19.50 EUR for all parts.\n\n- Level: easy\n- Cost: 4 to 6 euros\n\nReckon with about 120 EUR in total.\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Price,Currency\nD1,3,White LED,2.00,EUR\n,1,Case,3.00,EUR\nW1,60 cm,Hook-up wire,1.00,EUR\n',
        },
        expect: [
          { file: 'guide.md', line: 3, words: '9.60 to 10.00 EUR' },
          { file: 'parts.csv', line: 2, column: 16, words: '19.50 EUR' },
          { file: 'guide.md', line: 6, words: '4.00 to 6.00 EUR' },
          { file: 'guide.md', line: 8, words: '120.00 EUR' },
        ],
      },
    ],
  },
});

function pricedRow({ price, amount, fitted }: Part): PricedRow {
  return { price, fitted, amounts: amount.is === 'unknown' ? [] : amount.claims.slice(0, 1).map(({ value }) => value) };
}

/** The rows that cost most: a price that slipped is likely among them. */
function dearestRows(build: Build): Place[] {
  return build.parts
    .filter((part) => part.fitted && isRealPart(part))
    .map((part) => ({ place: part.cells.price ?? part.place, cost: Math.max(0, ...costsOf(pricedRow(part))) }))
    .sort((a, b) => b.cost - a.cost)
    .slice(0, 3)
    .map(({ place }) => place);
}

/** The last row of a list, where it states the one total. */
function* totalRow(build: Build, sum: PriceRange): Iterable<FindingDraft> {
  const [list, another] = build.partsLists;
  const source = list === undefined || another !== undefined ? undefined : build.texts.get(list.file);
  if (source === undefined || sum.priced < sum.rows || /\.(?:md|markdown)$/iu.test(source.file)) return;
  const lines = [...source.text.matchAll(/^[ \t,;"|]*(?:grand )?total\b[^\n]*$/gimu)];
  const [line] = lines;
  if (line === undefined || lines.length > 1) return;
  const sums = line[0]
    .split(/[,;\t|](?=\D|\d)/u)
    .map((cell) => parseMoney(cell.replace(/"/gu, '').trim(), sum.currency))
    .filter((money) => money !== null && money.amount > 0);
  const stated = sums.at(-1);
  if (!stated || sums.length > 1 || isWithin(stated.amount, sum, 0.005 * sum.rows + 0.005)) return;
  const start = line.index;
  const place = placeOf(source, [start, start + line[0].trimEnd().length]);
  yield differs([place], { ...stated, least: stated.amount, most: stated.amount }, sum, 'The row of the total says');
}

const talksOfTotal =
  /\b(?:all (?:the )?(?:parts|components|materials?)|in total|total|altogether|in all|all told|everything|whole build|bill of materials|(?:the )?(?:parts|components|materials) (?:together |will |should |may )*costs?|parts together|cost of (?:the )?(?:parts|components|materials)|costs?\b[^.]{0,30}\bto (?:build|make))\b/iu;
const talksOfMoney = /\b(?:costs?|total|pay|spend|prices?|budget|comes? to|adds? up|reckon)\b/iu;
const forAll = /^\s*(?:for|buys?) (?:all|everything|the (?:parts|components|materials|lot|whole))\b/iu;
const label =
  /^\W*(?:(?:estimated|approximate|approx\.?|total|overall|parts|material) )*(?:costs?|budget)\b[^.:]{0,30}:\W*(?:\b(?:about|around|roughly|approximately|approx\.?|ca\.?|some|up to|less than|under)\b\W*)*$/iu;
const otherTalk = /\b(?:postage|shipping|carriage|tools?|each|per|shop|instead|kit|saved?|tax)\b/iu;
const upTo = /\b(?:less than|under|below|at most|up to|no more than|max(?:imum)?)\b/iu;
const roughly = /\b(?:about|around|roughly|approximately|approx|ca|some)\b|~|≈/iu;

function* inText(build: Build, sum: PriceRange): Iterable<FindingDraft> {
  const told = new Set<string>();
  for (const { text, placeAt, isLabelled } of sentencesIn(build)) {
    const found = findMoney(text).filter(
      ({ currency }) => currency === null || sum.currency === null || currency === sum.currency,
    );
    const [stated] = found;
    if (stated === undefined || found.length > 1) continue;
    const [before, after] = [text.slice(0, stated.from), text.slice(stated.to)];
    const isTotal = isLabelled
      ? label.test(before)
      : forAll.test(after) || (talksOfTotal.test(text) && talksOfMoney.test(text));
    if (!isTotal || otherTalk.test(before) || isCompatible(stated, sum, before)) continue;
    const place = placeAt(stated.from, stated.to);
    const key = `${place.file} ${place.span[0]}`;
    if (told.has(key)) continue;
    told.add(key);
    yield differs([place, ...dearestRows(build)], stated, sum, 'The text says', build);
  }
}

function sentencesIn(build: Build) {
  return [
    ...spokenTexts(build).flatMap(({ words, place }) =>
      sentencesOf(words).map(({ text, start }) => ({
        text,
        placeAt: (from: number, to: number) => placeInside(place, start + from, start + to),
        isLabelled: false,
      })),
    ),
    ...promisesInFront(build).flatMap((one) => (one.ofTheWhole ? [{ ...one, isLabelled: true }] : [])),
  ];
}

/**
 * What a stated total may differ by. One to the cent was added up: a hundredth covers unit prices that are rounded to
 * the cent. A rough one is rounded to a digit or two, at most a fifth below; above, it may hold full packs, least
 * orders and postage, which are seldom more than twice what the pieces come to (both common practice, from memory).
 * Rows without a price make a sum that only grows.
 */
const rounded = { exact: 0.01, down: 0.8, up: 3 };

function isCompatible(stated: FoundMoney, sum: PriceRange, before: string): boolean {
  const isWhole = sum.priced === sum.rows;
  if (upTo.test(before)) return sum.least <= stated.most * 1.02;
  if (stated.exact && !roughly.test(before)) {
    if (!isWhole && stated.least > sum.least) return true;
    return isWithin(stated.least, sum, Math.max(0.05, sum.most * rounded.exact));
  }
  return stated.most >= sum.least * rounded.down && (!isWhole || stated.least <= sum.most * rounded.up);
}

function isWithin(amount: number, { least, most }: PriceRange, tolerance: number): boolean {
  return amount >= least - tolerance && amount <= most + tolerance;
}

function differs(
  sides: Place[],
  stated: Pick<FoundMoney, 'least' | 'most' | 'currency'>,
  sum: PriceRange,
  who: string,
  build?: Build,
): FindingDraft {
  const inMoney = ({ least, most }: { readonly least: number; readonly most: number }) =>
    `${least.toFixed(2)}${most - least < 0.005 ? '' : ` to ${most.toFixed(2)}`} ${sum.currency ?? stated.currency ?? ''}`.trim();
  const isOpen = sum.most - sum.least >= 0.005;
  return {
    subjects: ['build:cost'],
    mark: stated.most.toFixed(2),
    sides,
    basis: 'read',
    message: `${who} ${inMoney(stated)}; the prices ${build === undefined ? 'of its rows' : `in ${partsFileName(build)}`} come to ${inMoney(sum)}${isOpen ? ', as lengths are priced whole or by the metre' : ''}.`,
    consequence: 'A reader who adds up the list trusts neither figure.',
    remedy: isOpen ? 'Correct the total or the price that is wrong.' : `Write ${inMoney(sum)}, or correct the prices.`,
  };
}
