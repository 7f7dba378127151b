import type { Part } from '#core/part.ts';
import { defineCheck } from '../defineCheck.ts';
import { partKind } from '../partKind.ts';
import { firstRows, fittedRows } from '../partWords.ts';

export const partNumberMissing = defineCheck({
  id: 'part-number-missing',
  title: 'Parts that are bought by a link are also known by a number of their maker.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A link dies with the shop; the number of the maker finds the part in another one.',
  basis: 'common practice: maker and part number for each bought part that is no common ware',
  needs: { subject: ['parts'], witnesses: [] },
  *run({ build }) {
    const rows = fittedRows(build);
    if (rows.some(isNumbered)) return;
    const bought = rows.filter(({ links }) => links.some(({ kind }) => kind === 'shop'));
    const special = bought.filter((part) => makersWare.has(partKind(part) ?? 'other'));
    if (bought.length < 5 || bought.length * 2 < rows.length || special.length === 0) return;
    yield {
      subjects: ['build:parts'],
      sides: firstRows(special),
      basis: 'read',
      message: `${bought.length} rows have a link to a shop, and none of the list has a part number of a maker or a shop.`,
      consequence: 'When a page is gone, nobody can find the same part elsewhere, or prove that another is the same.',
      remedy: 'Add a column with the part numbers, first for sensors, modules and chips.',
    };
  },
  examples: {
    passes: [
      {
        title: 'a column of numbers',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Part number,Link\n1,Light sensor,LS-20,https://parts.example/1\n1,LED,,https://parts.example/2\n1,Lid,,https://parts.example/3\n1,Button,,https://parts.example/4\n1,Wire,,https://parts.example/5\n',
        },
      },
      {
        title: 'common ware, and a list without shops',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,Resistor,https://parts.example/1\n1,LED,https://parts.example/2\n1,Lid,https://parts.example/3\n1,Button,https://parts.example/4\n1,Wire,https://parts.example/5\n1,Light sensor,\n',
        },
      },
    ],
    fails: [
      {
        title: 'a light sensor that only a link names',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,LED,https://parts.example/1\n1,Light sensor,https://parts.example/2\n1,Lid,https://parts.example/3\n1,Button,https://parts.example/4\n1,Wire,https://parts.example/5\n',
        },
        expect: [{ file: 'parts.csv', line: 3, words: '5 rows' }],
      },
      {
        title: 'a type in the name is no number to order by',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,OLED display SSD1306 0.96 inch,https://parts.example/1\n1,Lamp,https://parts.example/2\n1,Lid,https://parts.example/3\n1,Button,https://parts.example/4\n1,Wire,https://parts.example/5\n1,Screws M3,\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '5 rows' }],
      },
    ],
  },
});

/** What differs from maker to maker although its name is the same. */
const makersWare: ReadonlySet<string> = new Set([
  'chip',
  'module',
  'motor',
  'relay',
  'supply',
  'battery',
  'transistor',
]);

function isNumbered({ mpn, cells }: Part): boolean {
  return mpn !== null || cells.supplierNumber !== undefined;
}
