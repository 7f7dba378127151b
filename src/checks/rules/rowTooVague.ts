import type { Part } from '#core/part.ts';
import { tokensOf } from '#notation/names.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import adjectives from '../knowledge/genericWords.json';
import nouns from '../knowledge/partKinds.json';
import { partKind } from '../partKind.ts';
import { firstRows, fittedRows, rowName, rowWords } from '../partWords.ts';
import { listed } from '../say.ts';

export const rowTooVague = defineCheck({
  id: 'row-too-vague',
  title: 'Every row tells what to buy without its link.',
  weight: 'slows',
  audience: 'builder',
  why: 'Links die and shops differ by country; what is left is the row.',
  basis: 'common practice: a part list names a type, the link only shows where it was bought',
  needs: { subject: ['parts'], witnesses: [] },
  *run({ build }) {
    const rows = fittedRows(build);
    if (rows.length < 3) return;
    const vague = rows.filter(isVague);
    if (vague.length === 0) return;
    const linked = vague.filter(({ links }) => links.length > 0);
    yield {
      subjects: ['build:parts'],
      sides: firstRows(vague),
      basis: 'read',
      message: `${listed(vague.map(rowName))} ${vague.length === 1 ? 'names' : 'name'} no type${
        linked.length === 0
          ? ''
          : linked.length === vague.length
            ? '; only the link tells what to buy'
            : '; for some only a link tells what to buy'
      }.`,
      consequence: 'A builder in another country, or after the link has died, cannot tell which one is meant.',
      remedy: `Add the type, such as the chip on the board, the size and the connector, to ${vague.length === 1 ? 'the row' : 'each row'}.`,
    } satisfies FindingDraft;
  },
  examples: {
    passes: [
      {
        title: 'types in the description, the value, the part number or a note',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Value,MPN,Note\n1,OLED display 0.96 inch,,,\n1,Barometer BMP280,,,\n1,GPS receiver,,NG-6M,\n1,Motor driver,L298N,,\n1,Servo,,,"9 g, metal gear"\n1,Lid,,,\n1,Blue Heron sensor,,,\n1,Quad buffer with 3-state outputs,,74AHCT125N,\n',
        },
      },
      {
        title: 'two rows on a slip',
        files: {
          'guide.md':
            '# Night light\n\n## Parts\n\n- 1 × motor driver\n- 1 × battery\n\n## Fit the lamp\n\nSolder it.\n',
        },
      },
    ],
    fails: [
      {
        title: 'modules by their purpose alone, with links',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,Barometer,https://parts.example/product/4494\n1,GPS,https://parts.example/product/4415\n1,Lid,\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'only the link' }],
      },
      {
        title: 'a sensor without anything, and a row that is a link',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description\n1,Temperature sensor\n1,https://parts.example/product/4415\n1,Lid\n4,M3 screw 8 mm\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '‘Temperature sensor’' }],
      },
    ],
  },
});

const typed = new Set(['module', 'chip', 'transistor', 'motor', 'relay']);

const generic = new Set([...Object.values(nouns.kinds).flat(), ...adjectives.words].flatMap((name) => tokensOf(name)));

/** Nothing but words that fit hundreds of types; or an address in place of a name. */
function isVague(part: Part): boolean {
  if (/^https?:\S+$/u.test(part.description.trim())) return true;
  const kind = partKind(part);
  if (kind === null || !typed.has(kind) || part.mpn !== null) return false;
  const words = tokensOf(rowWords(part).replace(/https?:\S+/gu, ''));
  return words.length <= 5 && words.every((word) => generic.has(word));
}
