import type { Build } from '#core/build.ts';
import type { Edit } from '#core/edit.ts';
import type { TextPlace } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import { defineCheck } from '../defineCheck.ts';
import { filesPlaying } from '../filesPlaying.ts';
import table from '../knowledge/trackingParameters.json';

export const linkTracked = defineCheck({
  id: 'link-tracked',
  title: 'Links lead to pages, and do not tell who sent the reader.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'Addresses copied from a shop or a letter carry marks that follow the reader, and break sooner than the page does.',
  basis: table.source,
  needs: { subject: ['files'], witnesses: [] },
  *run({ build }) {
    const tracked = trackedLinks(build);
    const worstFirst = tracked.toSorted((a, b) => b.place.quote.length - a.place.quote.length);
    const [first] = worstFirst;
    if (first === undefined) return;
    yield {
      subjects: ['build:links'],
      sides: worstFirst.slice(0, 5).map(({ place }) => place),
      message: `${tracked.length} address${tracked.length === 1 ? ' carries' : 'es carry'} marks for following readers, such as ‘${first.mark}’.`,
      consequence:
        'Readers are counted and followed by those whom the marks name, and a long address breaks when it is copied.',
      remedy: 'Cut each address back to what the page needs, and try it once.',
      mend: withoutMarks(build, tracked),
    };
  },
  examples: {
    passes: [
      {
        title: 'addresses with what the page needs',
        files: {
          'guide.md':
            '# Night light\n\nSee [the shop](https://parts.example/product?id=4494&color=red) and [the code](https://code.example/lamp?ref=main).\n\n## Fit it\n\nSolder D1.\n',
          'parts.csv': 'Quantity,Description,Link\n1,LED,https://parts.example/dp/B00ABCDEFG?variant=3\n',
        },
      },
      {
        title: 'words that only look like marks',
        files: {
          'guide.md':
            '# Night light\n\nRead https://notes.example/utm_zones and https://notes.example/ref/manual.\n\n## Fit it\n\nSolder D1.\n',
        },
      },
    ],
    fails: [
      {
        title: 'marks of a campaign, in guide and list',
        files: {
          'guide.md':
            '# Night light\n\nSee [the shop](https://parts.example/led?utm_source=letter&utm_medium=mail).\n\n## Fit it\n\nSolder D1.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,LED,https://parts.example/led?id=4&fbclid=IwAR0xyz123\n1,Lid,https://parts.example/lid\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: '2 addresses carry' }],
      },
      {
        title: 'where the page was found in the shop',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder D1.\n',
          'parts.csv':
            'Quantity,Description,Link\n1,LED,https://parts.example/dp/B00ABCDEFG/ref=sr_1_3?keywords=led&qid=1577896&sr=8-3\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '1 address carries' }],
      },
      {
        title: 'the longest of many, in whatever row',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder D1.\n',
          'parts.csv': `Quantity,Description,Link\n${[1, 2, 3, 4, 5].map((n) => `1,LED ${n},https://parts.example/led?id=${n}&gclid=a\n`).join('')}1,Glue,https://parts.example/glue?id=6&gclid=abcdefghijklmnop&utm_source=letter\n`,
        },
        expect: [{ file: 'parts.csv', line: 7, words: '6 addresses carry' }],
      },
    ],
  },
});

interface Tracked {
  readonly mark: string;
  /** What is left without the marks; null where it may not lead to the same page. */
  readonly plain: string | null;
  readonly place: TextPlace;
}

const address = /\bhttps?:\/\/[^\s<>"'`)\]|]+/g;
const added = new RegExp(`^(?:${table.added.join('|')})$`, 'i');
const searched = new RegExp(`^(?:${table.searched.join('|')})$`, 'i');

function trackedLinks(build: Build): Tracked[] {
  return [...filesPlaying(build, 'guide', 'parts', 'tools')].flatMap((file) => {
    const source = build.texts.get(file);
    const isTable = /\.(?:csv|tsv)$/i.test(file);
    return source === undefined || build.sources.some((code) => code.file === file)
      ? []
      : [...source.text.matchAll(address)].flatMap(({ 0: url, index }) => {
          const found = marksOf(url.replace(isTable ? /[,;].*$/ : /,(?=https?:).*$|[.,;:!?]+$/, ''));
          return found === null ? [] : [{ ...found, place: placeOf(source, [index, index + found.length]) }];
        });
  });
}

function marksOf(url: string): { mark: string; plain: string | null; length: number } | null {
  const [, base = '', query = '', fragment = ''] = /^([^?#]*)\??([^#]*)(#.*)?$/.exec(url) ?? [];
  const fields = query.split('&').filter((field) => field !== '');
  const nameOf = (field: string) => field.split('=')[0] ?? field;
  const marks = fields.filter((field) => added.test(nameOf(field)));
  const rest = fields.filter((field) => !added.test(nameOf(field)));
  const other =
    rest.find((field) => searched.test(nameOf(field)) || /^ref=.*[\w-]{20,}/i.test(field)) ??
    /\/(ref=[^/?#]+)/.exec(base)?.[1];
  const mark = other ?? marks[0] ?? (query.length > table.longest ? query.slice(0, 30) : undefined);
  if (mark === undefined) return null;
  const plain = other === undefined && marks.length > 0 && query.length <= table.longest;
  return {
    mark: mark.length > 40 ? `${mark.slice(0, 39)}…` : mark,
    plain: plain ? `${base}${rest.length > 0 ? `?${rest.join('&')}` : ''}${fragment}` : null,
    length: url.length,
  };
}

/** Where every address stands without what was added to it, and all lie in one file. */
function withoutMarks(build: Build, tracked: readonly Tracked[]): Edit | null {
  const file = tracked[0]?.place.file ?? '';
  const source = build.texts.get(file);
  const changes = tracked.flatMap(({ plain, place }) =>
    plain === null || place.file !== file ? [] : [{ span: place.span, text: plain }],
  );
  if (source === undefined || changes.length < tracked.length) return null;
  return { file, base: source.hash, changes, why: 'Takes the marks for following readers out of the addresses' };
}
