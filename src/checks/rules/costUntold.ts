import type { Build } from '#core/build.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { guideWords } from '../guideWords.ts';
import { firstRows, fittedRows, isDetailedList } from '../partWords.ts';
import { listed, partsFiles } from '../say.ts';

export const costUntold = defineCheck({
  id: 'cost-untold',
  title: 'A reader learns what the build costs, in which currency, and when that was so.',
  weight: 'tidy',
  audience: 'publisher',
  words: 'English',
  why: 'Editors and readers ask first what it costs; a sum without a currency or a date is no answer.',
  basis: 'common practice of printed build guides',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run({ build }) {
    if (!isDetailedList(build)) return;
    const priced = fittedRows(build).filter(({ price }) => price !== null);
    const open = openOf(build);
    if (open.length === 0) return;
    yield {
      subjects: ['build:cost'],
      sides: priced.length > 0 ? firstRows(priced.slice(0, 1)) : partsFiles(build),
      message:
        priced.length === 0
          ? 'Neither the guide nor the list says what the parts cost.'
          : `The prices have ${listed(open)}.`,
      consequence: 'A reader cannot tell whether the build is within reach.',
      remedy:
        priced.length === 0
          ? 'Add a price to each bought row, or one sentence with the total, its currency and its date.'
          : `Add ${listed(open.map((one) => (one === 'no date' ? 'a column Price date' : 'a column Currency')))} to the list, or a sentence that says it.`,
    } satisfies FindingDraft;
  },
  examples: {
    passes: [
      {
        title: 'prices with currency and date',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Price,Currency,Price date\nD1,1,White LED,0.20,EUR,2026-02-01\nR1,1,Resistor,0.05,EUR,2026-02-01\nSW1,1,Button,0.30,EUR,2026-02-01\n',
        },
      },
      {
        title: 'one sentence with the total',
        files: {
          'guide.md': '# Night light\n\nThe parts cost about 12 EUR in March 2026.\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\nR1,1,Resistor\nSW1,1,Button\n',
        },
      },
    ],
    fails: [
      {
        title: 'no word about money',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\nR1,1,Resistor\nSW1,1,Button\n',
        },
        expect: [{ file: 'parts.csv', words: 'Neither' }],
      },
      {
        title: 'bare figures',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Price\nD1,1,White LED,0.20\nR1,1,Resistor,0.05\nSW1,1,Button,0.30\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'no currency and no date' }],
      },
    ],
  },
});

const sumOfMoney =
  /[€£¥]\s?\d|\$\s?\d|\d\s?(?:€|£|\$)|\d\s(?:EUR|USD|GBP|CHF|AUD|CAD|JPY|SEK|NOK|DKK|PLN|CZK|INR|CNY)\b|\b(?:EUR|USD|GBP|CHF)\s?\d|\d\s(?:euros?|dollars?|pounds?|francs?)\b/u;

function openOf(build: Build): string[] {
  const guide = guideWords(build);
  const prices = fittedRows(build).flatMap(({ price }) => (price === null ? [] : [price]));
  if (prices.length === 0) return sumOfMoney.test(guide) ? [] : ['no price'];
  // A sign such as $ leaves open whose dollars; a date may stand in the text or in the list's heading.
  const files = build.partsLists.flatMap(({ file }) => build.texts.get(file)?.text ?? []).join('\n');
  const hasSign = /[€£$¥]/u.test(files);
  const hasDate = /\b20\d\d\b/u.test(`${guide}\n${files.replace(/https?:\S+/gu, '')}`);
  return [
    ...(prices.every(({ currency }) => currency === null) && !hasSign ? ['no currency'] : []),
    ...(prices.every(({ date }) => date === null) && !hasDate ? ['no date'] : []),
  ];
}
