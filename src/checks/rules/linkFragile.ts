import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { firstRows, fittedRows, rowName } from '../partWords.ts';
import { listed } from '../say.ts';

export const linkFragile = defineCheck({
  id: 'link-fragile',
  title: 'Links in the parts list lead to products, not to baskets or short addresses.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A shared basket or a short address dies with the shop session or the service that made it.',
  basis: 'common practice: forms of addresses of baskets and of shortening services',
  needs: { subject: ['parts'], witnesses: [] },
  *run({ build }) {
    const rows = fittedRows(build).filter(({ links }) => links.some(({ url }) => isFragile(url)));
    if (rows.length === 0) return;
    yield {
      subjects: ['build:parts'],
      sides: firstRows(rows),
      basis: 'read',
      message: `The link of ${listed(rows.map(rowName))} leads to a basket, a wish list or a short address.`,
      consequence: 'A reader finds it empty or gone within months.',
      remedy: "Link the product's own page, and let the row tell what it is.",
    } satisfies FindingDraft;
  },
  examples: {
    passes: [
      {
        title: 'pages of products, data sheets and files',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,LED,https://parts.example/product/4494\n1,Resistor,https://parts.example/cartridge-resistors/r-150\n1,Lid,design/lid.stl\n',
        },
      },
      {
        title: 'no links',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv': 'Quantity,Description\n1,LED\n1,Resistor\n',
        },
      },
    ],
    fails: [
      {
        title: 'a basket',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,LED,https://parts.example/cart/share?id=8812\n1,Resistor,https://parts.example/product/1\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'LED' }],
      },
      {
        title: 'a short address',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv': 'Quantity,Description,Link\n1,LED,https://sh.rt/aB3xZ9q\n1,Resistor,\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'short address' }],
      },
    ],
  },
});

function isFragile(url: string): boolean {
  return (
    /\/(?:(?:shopping|shared?)[-_]?)?(?:cart|basket|wish-?lists?)(?:[/?#]|$)/iu.test(url) ||
    // One word of mixed letters and digits behind a very short name of a host.
    /^https?:\/\/[a-z\d-]{1,7}\.[a-z]{2,3}\/(?=[A-Za-z]*\d|[a-z]+[A-Z])[A-Za-z\d]{5,10}$/u.test(url)
  );
}
