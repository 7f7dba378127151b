import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import { plainText } from '#core/text.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { partNouns, wordForms } from '../partNouns.ts';
import { firstRows, fittedRows, rowName } from '../partWords.ts';
import { everyInline, runsOf } from '../runningText.ts';
import { listed } from '../say.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const sourceUntold = defineCheck({
  id: 'source-untold',
  title: 'Where the guide says where to buy, it says so for each part that no shop has by its name alone.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'The part without a source is the one for which the parcel waits.',
  basis: 'common practice: a column or a page of sources without gaps',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    yield* leftToSearch(build);
    const gaps = gapsOf(build);
    if (gaps !== null) yield gaps;
  },
  examples: {
    passes: [
      {
        title: 'a link or a part number for each row but the screws; no sources at all',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nSolder D1. Search the board for bridges. Google has nothing to do with it.\n',
          'parts.csv':
            'Quantity,Description,Link,MPN\n1,Lamp,https://parts.example/1,\n1,Dimmer,https://parts.example/2,\n1,Driver,,LD-4007-X\n1,Base,https://parts.example/3,\n1,Tray,https://parts.example/4,\n4,M3 screw 8 mm,,\n',
        },
      },
      {
        title: 'a page of sources that names them all',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × white lamp\n- 1 × dimmer\n- 2 × cell\n- 1 × tray\n- 1 × lens\n- 1 × shade\n\nWhere to buy stands [here](buying.md).\n\n## Fit it\n\nSolder the lamp.\n',
          'buying.md':
            '# Buying\n\n- [White lamp](https://parts.example/1)\n- [Dimmer](https://parts.example/2)\n- [Cells](https://parts.example/3)\n- [Tray](https://parts.example/4)\n- [Lens](https://parts.example/5)\n- [Shade](https://parts.example/6)\n',
        },
      },
    ],
    fails: [
      {
        title: 'a page of sources that forgets two',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × white lamp\n- 1 × dimmer\n- 2 × cell\n- 1 × tray\n- 1 × lens\n- 1 × shade\n\nWhere to buy stands [here](buying.md).\n\n## Fit it\n\nSolder the lamp.\n',
          'buying.md':
            '# Buying\n\n- [White lamp](https://parts.example/1)\n- [Dimmer](https://parts.example/2)\n- [Tray](https://parts.example/4)\n- [Shade](https://parts.example/6)\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: '‘cell’ and ‘lens’' }],
      },
      {
        title: 'a shop that the reader is to find',
        files: {
          'guide.md':
            '# Lamp\n\nSome shops sell the board. Just google around and you will find one.\n\n## Fit it\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'google around' }],
      },
    ],
  },
});

const search =
  /\b(?:google (?:around|it|them|for (?:it|them|one))|search (?:for (?:it|them|one) )?(?:online|on the (?:web|internet|net)|the (?:web|internet|net))|(?:have a )?look around (?:online|on the (?:web|internet))|(?:find|get|buy|order) (?:it|them|one|these|those|some) (?:somewhere|anywhere|everywhere)(?: online| on the (?:web|internet))?)\b/iu;

/** Sentences that leave it to the reader to find a source. */
function* leftToSearch(build: Build): Iterable<FindingDraft> {
  const found = everySection(build).flatMap((section) =>
    sentencesIn(section).flatMap(({ text, written, place }) => {
      const match = search.exec(text);
      return match === null || /\]\(|\]\[/u.test(written) ? [] : [{ words: match[0], place }];
    }),
  );
  const [first] = found;
  if (first === undefined) return;
  yield {
    subjects: ['build:sources'],
    mark: 'search',
    sides: found.slice(0, 5).map(({ place }) => place),
    basis: 'read',
    message: `The guide says ‘${first.words}’, and leaves it to its reader to find a source.`,
    consequence: 'A builder searches without knowing what to look for, or finds another thing of that name.',
    remedy: 'Name the place where you got it, with the date, or the words that find the right thing.',
  };
}

/** Things that any shop has by the words of the row. */
const common =
  /\b(?:screws?|nuts?|bolts?|washers?|wires?|tape|glue|solder|resistors?|capacitors?|batter(?:y|ies)|heat-?shrink|cable ties?|magnets?|cardboard|paper|jumper|printed|own|hand-?made|pcbs?|boards?|plates?)\b/iu;

/** Rows without a source, where at least half of the rows have one and most of those are links. */
function gapsOf(build: Build): FindingDraft | null {
  const rows = fittedRows(build);
  if (rows.length < 5) return null;
  const links = everySection(build).flatMap((section) => linksIn(section));
  const sourced = rows.filter((part) => hasSource(part, links));
  if (sourced.length * 2 < rows.length || sourced.length === rows.length) return null;
  const gaps = rows.filter((part) => !sourced.includes(part) && !common.test(part.description));
  if (gaps.length === 0) return null;
  return {
    subjects: ['build:sources'],
    mark: 'gaps',
    sides: firstRows(gaps),
    basis: 'read',
    message: `The guide says where to get ${sourced.length} of ${rows.length} listed parts, and not where to get ${listed(gaps.map(rowName), 6)}.`,
    consequence: 'A builder orders the rest, and finds these missing when the parcel is there.',
    remedy: 'Add for each of them where you got it, or a maker’s part number.',
  };
}

interface NamedLink {
  readonly words: ReadonlySet<string>;
  readonly place: TextPlace;
}

function linksIn(section: Parameters<typeof runsOf>[0]): NamedLink[] {
  return runsOf(section).flatMap(({ nodes, place }) =>
    everyInline(nodes).flatMap((node) =>
      node.kind === 'link' && /^https?:/iu.test(node.url)
        ? [{ words: new Set(wordForms(plainText([node]))), place }]
        : [],
    ),
  );
}

/** In its own row, or by a link whose words hold its noun. */
function hasSource(part: Part, links: readonly NamedLink[]): boolean {
  if (part.links.length > 0 || part.mpn !== null || part.supplier !== null || part.cells.supplierNumber !== undefined)
    return true;
  const inRow = (place: TextPlace) => place.file === part.place.file && place.line === part.place.line;
  return links.some(({ words, place }) => inRow(place) || partNouns(part).own.some((name) => words.has(name)));
}
