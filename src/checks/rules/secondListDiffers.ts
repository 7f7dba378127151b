import type { Build } from '#core/build.ts';
import type { Ref } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { type Block, type Inline, plainText } from '#core/text.ts';
import { parseItem } from '#notation/items.ts';
import { parseRefs } from '#notation/refs.ts';
import { knownThings } from '#prose/knownThings.ts';
import { placeInside } from '#prose/placeInside.ts';
import { sameTool } from '#rehearsal/sameTool.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { listed, partsFileName } from '../say.ts';

export const secondListDiffers = defineCheck({
  id: 'second-list-differs',
  title: 'A list of parts or tools that the guide repeats says what the list itself says.',
  weight: 'slows',
  audience: 'builder',
  why: 'Of two lists one is out of date, and a builder buys from the one that comes first.',
  basis: 'common practice: one fact has one owner, every other place is compared with it',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    for (const section of build.instructions.sections) {
      if (section.role === 'parts' && !isOwn(build, section, 'parts')) yield* partsAgainst(build, section);
      if (section.role === 'tools' && !isOwn(build, section, 'tools')) yield* toolsAgainst(build, section);
    }
  },
  examples: {
    passes: [
      {
        title: 'the same parts and tools in other words',
        files: {
          'guide.md':
            '# Night light\n\n## Parts\n\n| Reference | Quantity | Description |\n| --- | --- | --- |\n| R1, R2 | 2 | Resistor 150 Ω |\n| D1 | 1 | LED |\n| | 4 | M3 screws |\n\n## Tools\n\n- Iron\n- Side cutters\n\n## Fit the lamp\n\nSolder D1.\n',
          'parts.csv': 'Reference,Quantity,Description\n"R1, R2",2,Resistor 150 Ω\nD1,1,White LED 5 mm\n,4,M3 screw\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\nSide cutters,yes\nThird hand,no\n',
        },
      },
      {
        title: 'the section is the list',
        files: {
          'guide.md':
            '# Night light\n\n## Parts\n\n| Reference | Quantity | Description |\n| --- | --- | --- |\n| R1 | 1 | Resistor 150 Ω |\n| D1 | 1 | LED |\n\n## Fit the lamp\n\nSolder D1.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a row more, a row less, and another count',
        files: {
          'guide.md':
            '# Night light\n\n## Parts\n\n| Reference | Quantity | Description |\n| --- | --- | --- |\n| R1 | 1 | Resistor 150 Ω |\n| R3 | 1 | Resistor 10 kΩ |\n| D1 | 1 | LED |\n| | 6 | M3 screw |\n\n## Fit the lamp\n\nSolder D1.\n',
          'parts.csv':
            'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nR2,1,Resistor 150 Ω\nD1,1,White LED 5 mm\n,4,M3 screw\n',
        },
        expect: [
          { file: 'guide.md', line: 8, words: 'R3' },
          { file: 'guide.md', line: 3, words: 'R2' },
          { file: 'guide.md', line: 10, words: '6' },
        ],
      },
      {
        title: 'a tool that only the guide knows',
        files: {
          'guide.md':
            '# Night light\n\n## Tools\n\n- Soldering iron\n- Crimping tool\n\n## Fit the lamp\n\nSolder D1.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\nSide cutters,yes\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'Crimping tool' }],
      },
    ],
  },
});

/** Whether the section itself was read as the list. */
function isOwn(build: Build, { file, id }: Section, name: 'parts' | 'tools'): boolean {
  const places = build.roles.find(({ role }) => role === name)?.places ?? [];
  const lists =
    name === 'parts' ? build.partsLists.map((list) => list.file) : build.tools.map(({ place }) => place.file);
  return (
    lists.length === 0 || lists.includes(file) || places.some((place) => place === file || place === `${file}#${id}`)
  );
}

interface Row {
  readonly refs: readonly Ref[];
  readonly name: string;
  /** Null where the row gives no number. */
  readonly n: number | null;
  readonly place: TextPlace;
}

function* partsAgainst(build: Build, section: Section): Iterable<FindingDraft> {
  const rows = section.blocks.flatMap(rowsOf);
  const known = knownThings(build);
  const list = partsFileName(build);
  const shown = new Set(rows.flatMap(({ refs }) => refs));
  const own = build.parts.filter(({ fitted }) => fitted).flatMap(({ refs }) => refs);
  // A list with references of its own kind, or of one board of several, is no copy.
  if (shown.size > 0 && own.filter((ref) => shown.has(ref)).length * 2 < shown.size) return;
  for (const row of rows) {
    const strange = row.refs.filter((ref) => !known.partOfRef.has(ref));
    if (strange.length > 0) {
      yield differs(
        row.place,
        `row-${strange.join('-')}`,
        `${listed(strange)} ${strange.length === 1 ? 'stands' : 'stand'} in the guide's own list of parts, and not in ${list}.`,
      );
      continue;
    }
    const part = row.refs.length > 0 ? known.partOfRef.get(row.refs[0] ?? '') : known.partNamed(row.name);
    const amount =
      part === undefined || part === null || part.amount.is === 'unknown' ? null : part.amount.claims[0].value;
    const isWhole = row.refs.length === 0 || part?.refs.length === row.refs.length;
    if (part === undefined || part === null || amount === null || row.n === null || !isWhole || amount.unit !== 'pcs')
      continue;
    if (row.n !== amount.n)
      yield {
        ...differs(
          row.place,
          `count-${part.id}`,
          `The guide's own list asks for ${row.n} of ${part.refs[0] ?? part.description}, ${list} for ${amount.n}.`,
        ),
        sides: [row.place, part.cells.quantity ?? part.place],
      };
  }
  const lacking = own.filter((ref) => !shown.has(ref));
  if (shown.size >= 2 && lacking.length > 0 && lacking.length * 2 <= own.length)
    yield differs(
      section.place,
      'lacking',
      `${listed(lacking)} ${lacking.length === 1 ? 'stands' : 'stand'} in ${list}, and not in the guide's own list of parts.`,
    );
}

function* toolsAgainst(build: Build, section: Section): Iterable<FindingDraft> {
  const items = section.blocks.flatMap(rowsOf);
  const [firstTool] = build.tools;
  if (firstTool === undefined || items.length < 2) return;
  const shared = items.filter(({ name }) => build.tools.some((tool) => sameTool(tool.name, name)));
  const strange = items.filter((item) => !shared.includes(item));
  if (shared.length === 0 || strange.length === 0) return;
  yield {
    subjects: [`file:${section.file}`],
    mark: 'tools',
    sides: [...strange.slice(0, 4).map(({ place }) => place), firstTool.place],
    basis: 'read',
    message: `The guide's own list of tools holds ${listed(strange.map(({ name }) => `‘${name}’`))}; ${firstTool.place.file} does not.`,
    consequence: 'A builder lays out one of the two lists.',
    remedy: `Add what is needed to ${firstTool.place.file}, and drop the second list.`,
  };
}

function differs(place: TextPlace, mark: string, message: string): FindingDraft {
  return {
    subjects: [`file:${place.file}`],
    mark,
    sides: [place],
    basis: 'read',
    message,
    consequence: 'A builder buys by one of the two lists, and may lack a part.',
    remedy: 'Correct the one that is wrong, or drop the second list: the guide is published with the first.',
  };
}

function rowsOf(block: Block): Row[] {
  if (block.kind === 'list') {
    return block.items.flatMap(({ blocks }) => {
      const [first] = blocks;
      if (first?.kind !== 'paragraph') return [];
      const { refs, name, amount } = parseItem(plainText(first.children).split('\n')[0] ?? '');
      return [
        {
          refs,
          name: name.split(/[:(,–]/)[0]?.trim() ?? name,
          n: refs.length > 0 || amount.n > 1 ? amount.n : null,
          place: first.place,
        },
      ];
    });
  }
  if (block.kind !== 'table') return [];
  const headings = block.header.map((cell) => plainText(cell).trim());
  const column = (pattern: RegExp) => headings.findIndex((heading) => pattern.test(heading));
  const at = {
    refs: column(/^(?:ref|designator|part ref|position)/i),
    n: column(/^(?:qty|quantity|amount|count|number|pcs|pieces|#|n|×|x)\.?$/i),
    name: column(/^(?:desc|part|component|item|name|tool|what|material)/i),
  };
  const lines = [...block.place.quote.matchAll(/[^\r\n]+/g)].slice(2);
  return block.rows.map((row, index) => rowFrom(row, at, lines[index], block.place));
}

function rowFrom(
  row: readonly (readonly Inline[])[],
  at: { refs: number; n: number; name: number },
  line: RegExpExecArray | RegExpMatchArray | undefined,
  place: TextPlace,
): Row {
  const cell = (index: number) => plainText(row[index] ?? []).trim();
  const written = cell(at.n);
  const name = cell(Math.max(at.name, 0));
  return {
    refs: at.refs < 0 ? [] : parseRefs(cell(at.refs)).refs,
    name,
    n: /^\d+(?:\s*(?:×|x|pcs?\.?))?$/i.test(written) ? Number.parseInt(written, 10) : null,
    place: line?.index === undefined ? place : placeInside(place, line.index, line.index + line[0].length),
  };
}
