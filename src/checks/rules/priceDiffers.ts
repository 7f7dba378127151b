import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { fittedRows, rowName } from '../partWords.ts';
import { listed } from '../say.ts';

export const priceDiffers = defineCheck({
  id: 'price-differs',
  title: 'What is bought at one address has one price.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A price that was mended in one row and not in the next makes every sum doubtful.',
  basis: 'common practice: rows of the parts list with the same link, held against each other',
  needs: { subject: ['parts'], witnesses: [] },
  *run({ build }) {
    for (const [url, rows] of sameAddress(build)) {
      const prices = [...new Set(rows.map(priceOf))];
      if (prices.length < 2) continue;
      yield {
        subjects: ['build:prices'],
        mark: url,
        sides: rows.slice(0, 5).map(({ cells, place }) => cells.price ?? place),
        basis: 'read',
        message: `${listed(rows.map(rowName))} are bought at the same address, for ${listed(prices)}.`,
        consequence: 'A reader cannot tell which price holds, or whether two different things are meant.',
        remedy: 'Write one price; or, where the page sells several sorts, say in each row which one.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'one address with one price, also for a pack of two',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Unit price,Link\n1,Red LED,0.20,https://parts.example/led?id=4\n1,Green LED,0.20,https://parts.example/led?id=4\n1,Lid,1.00,https://parts.example/lid\n',
        },
      },
      {
        title: 'pages that differ in what is asked of them',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Unit price,Link\n1,Red LED,0.20,https://parts.example/item?id=4\n1,Green LED,0.30,https://parts.example/item?id=5\n',
        },
      },
    ],
    fails: [
      {
        title: 'a price that was mended in one row',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Unit price,Link\n1,Red LED,0.20,https://parts.example/led\n1,Lid,1.00,https://parts.example/lid\n1,Green LED,0.25,https://parts.example/led\n',
        },
        expect: [{ file: 'parts.csv', line: 4, words: '0.2 and 0.25' }],
      },
      {
        title: 'the same with marks of the shop in the address',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Unit price,Link\n0.1,Base,22.00 EUR,https://parts.example/roll/ref=order_1\n0.2,Lid,23.50 EUR,https://parts.example/roll/ref=order_2\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '22 EUR and 23.5 EUR' }],
      },
    ],
  },
});

/** Rows with a price by the page that their link leads to, marks of the shop's own and fragments left out. */
function sameAddress(build: Build): (readonly [string, Part[]])[] {
  const priced = fittedRows(build).flatMap((part) => {
    const link = part.links.find(({ kind }) => kind === 'shop');
    return link === undefined || part.price === null ? [] : [{ part, url: pageOf(link.url) }];
  });
  return [...groupedBy(priced, ({ url }) => url)].map(([url, rows]) => [url, rows.map(({ part }) => part)] as const);
}

function pageOf(url: string): string {
  return url
    .replace(/#.*$/u, '')
    .replace(/\/ref=.*$/u, '')
    .replace(/\/$/u, '')
    .toLowerCase();
}

function priceOf({ price }: Part): string {
  if (price === null) return '';
  const each = Math.round((price.amount / price.per) * 10_000) / 10_000;
  return `${each}${price.currency === null ? '' : ` ${price.currency}`}`;
}
