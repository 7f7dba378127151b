import type { Build } from '#core/build.ts';
import type { Path, Place } from '#core/place.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { isRealPart } from '../realParts.ts';

export const partsListMissing = defineCheck({
  id: 'parts-list-missing',
  title: 'The build has a parts list with at least one real row.',
  weight: 'halts',
  audience: 'builder',
  why: 'Without a list a builder buys from the pictures, and finds out at the bench what is lacking.',
  basis: 'DIN SPEC 3105-1 and the Open Source Hardware Definition ask for a bill of materials',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    if (build.parts.some(isRealPart)) return;
    const stub = build.parts[0];
    const unread = listNamed(build);
    yield {
      subjects: ['build:parts'],
      sides: [stub?.place ?? whereExpected(build)],
      message:
        stub === undefined
          ? (insteadOfRows(build) ??
            (unread === undefined
              ? 'No file or section of the build lists any parts.'
              : `${unread} is named as parts list; no row of it could be read as a part.`))
          : `The parts list holds nothing but ${JSON.stringify(stub.place.quote)}.`,
      consequence: 'A builder cannot buy what is not listed, and cannot start.',
      remedy:
        stub === undefined
          ? unread === undefined
            ? 'List every part with reference, quantity and description, in parts.csv or under a heading Parts.'
            : 'Name its columns in the first row, such as Reference, Quantity and Description.'
          : 'Replace the stand-in by a row for each part: reference, quantity and description.',
    } satisfies FindingDraft;
  },
  examples: {
    passes: [
      {
        title: 'a list of its own',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1 to the board.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
        },
      },
      {
        title: 'a list under a heading of the guide',
        files: {
          'guide.md':
            '# Night light\n\n## Parts\n\n- 1 × white LED 5 mm\n- 1 × resistor 150 Ω\n- 2 × AA cell\n\n## Fit the lamp\n\nSolder the LED to the board.\n',
        },
      },
    ],
    fails: [
      {
        title: 'no list anywhere',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder the LED to the board.\n' },
        expect: [{ file: 'guide.md', line: 1, words: 'No file or section' }],
      },
      {
        title: 'a heading with a promise under it',
        files: {
          'guide.md':
            '# Night light\n\nA light for the hall.\n\n## Parts\n\nInsert table here.\n\n## Fit the lamp\n\nSolder the LED to the board.\n',
        },
        expect: [{ file: 'guide.md', line: 5 }],
      },
      {
        title: 'a picture of a table',
        files: {
          'guide.md':
            '# Night light\n\nA light for the hall.\n\n## Parts\n\n![Table of parts](parts.png)\n\n## Fit the lamp\n\nSolder the LED to the board.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'as a picture' }],
      },
      {
        title: 'a link to a list that may be gone tomorrow',
        files: {
          'guide.md':
            '# Night light\n\nA light for the hall.\n\n## Parts\n\nSee [the list](https://lists.example/1).\n\n## Fit the lamp\n\nSolder the LED to the board.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'elsewhere' }],
      },
      {
        title: 'a table under headers that tell nothing',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder the LED to the board.\n',
          'shop.csv': 'a1,a2\nx,y\n',
          'twicebuilt.yaml': 'format: 1\nroles:\n  parts:\n    - shop.csv\n',
        },
        expect: [{ file: 'shop.csv', words: 'could be read as a part' }],
      },
      {
        title: 'a table whose only row is a stand-in',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder the LED to the board.\n',
          'parts.csv': 'Reference,Quantity,Description\n,,TODO: add the parts\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'TODO' }],
      },
    ],
  },
});

/** What stands under the heading of the parts in place of a list: a picture, or a link to somewhere else. */
function insteadOfRows({ instructions: { sections } }: Build): string | null {
  const heading = sections.find(({ role }) => role === 'parts');
  if (heading === undefined) return null;
  if (heading.pictures.length > 0) return `The parts stand under ‘${heading.heading}’ as a picture and in no list.`;
  const isLink = heading.blocks.some(
    (block) => block.kind === 'paragraph' && block.children.some(({ kind }) => kind === 'link'),
  );
  return isLink ? `‘${heading.heading}’ leads to a list elsewhere; the folder holds none.` : null;
}

/** The file that is to be the parts list. */
function listNamed({ roles, files }: Build): Path | undefined {
  return roles.find(({ role }) => role === 'parts')?.places.find((place) => files.some(({ path }) => path === place));
}

/** The heading that promises a list, or the first words of the guide. */
function whereExpected(build: Build): Place {
  const {
    instructions: { sections },
    files,
  } = build;
  const heading = sections.find(({ role }) => role === 'parts');
  if (heading !== undefined) return heading.place;
  const file = listNamed(build);
  if (file !== undefined) return { kind: 'file', file };
  return sections[0]?.place ?? { kind: 'file', file: files[0]?.path ?? '.' };
}
