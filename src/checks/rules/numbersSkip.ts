import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';

export const numbersSkip = defineCheck({
  id: 'numbers-skip',
  title: 'Numbers that are typed before steps and pictures follow each other.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'Where a number is missing, a reader looks for the step that goes with it.',
  basis: 'common practice of copy-editing',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const rows = [...headings(build.instructions.sections), ...pictures(build.instructions.sections)];
    for (const row of rows) {
      for (const [index, { number, place }] of row.entries()) {
        const before = row[index - 1];
        if (before === undefined || number === before.number + 1 || number === 1) continue;
        yield {
          subjects: [`file:${place.file}`],
          mark: `after-${before.number}-${number}`,
          sides: [place, before.place],
          message: `Number ${number} stands where ${before.number + 1} should follow ${before.number}.`,
          consequence: 'A reader looks for what was left out, or takes two things for one.',
          remedy: 'Number them anew, or leave the numbers to the program.',
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'in order, by stage, in order again in the next chapter',
        files: {
          'guide.md':
            '# Lamp\n\n## One\n\n### Step 1: Fit D1\n\nSolder D1.\n\n### Step 2: Fit R1\n\nSolder R1.\n\n### Step 3: Look\n\nLook.\n\n## Two\n\n### Step 1: Close it\n\nClose it.\n\n### Step 2: Turn it\n\nTurn it.\n',
        },
      },
      {
        title: 'two numbers make no row, and names that begin with a number',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × lamp\n\n## Solder it\n\nSolder the lamp.\n\n## 3.3 V supply\n\nFit it.\n\n## 5 V supply\n\nFit it.\n\n## 12 V supply\n\nFit it.\n\n## Look\n\n![Step 2](a.jpg)\n\n![Step 7](b.jpg)\n',
        },
      },
    ],
    fails: [
      {
        title: 'a step that was taken out',
        files: {
          'guide.md': '# Lamp\n\n## 1. Fit D1\n\nSolder D1.\n\n## 2. Fit R1\n\nSolder R1.\n\n## 4. Look\n\nLook.\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'Number 4 stands where 3' }],
      },
      {
        title: 'under pictures, the same number twice',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\n![Figure 1](a.jpg)\n\nSolder D1.\n\n![Figure 2](b.jpg)\n\nTurn it.\n\n![Figure 2](c.jpg)\n\nLook.\n',
        },
        expect: [{ file: 'guide.md', line: 13, words: 'Number 2 stands where 3' }],
      },
    ],
  },
});

interface Numbered {
  readonly number: number;
  readonly place: TextPlace;
}

const fewest = 3;

/** Headings of one level below the same heading, where most of them carry a number. */
function headings(sections: readonly Section[]): Numbered[][] {
  const below = groupedBy(sections, ({ file, depth, parents }) => `${file} ${depth} ${parents.join(' > ')}`);
  return [...below.values()].map((row) => row.flatMap(({ heading, place }) => numberOf(heading, place))).filter(isRow);
}

function numberOf(heading: string, place: TextPlace): Numbered[] {
  const match = /^\W*(?:(?:step|stage|part|chapter) (\d{1,2})(?![.\d]*\d)|(\d{1,2})[.):](?=\s))/iu.exec(heading);
  return match === null ? [] : [{ number: Number(match[1] ?? match[2]), place }];
}

/** Pictures of a page whose words are a number and no more. */
function pictures(sections: readonly Section[]): Numbered[][] {
  const all = sections.flatMap((section) => section.pictures);
  const rows = groupedBy(all, ({ alt, place }) => `${place.file} ${/^\p{L}+/u.exec(alt)?.[0].toLowerCase() ?? ''}`);
  return [...rows.values()]
    .map((row) =>
      row.flatMap(({ alt, place }): Numbered[] => {
        const match = /^(?:step|fig(?:ure|\.)?|picture|photo|image) (\d{1,3})\W*$/iu.exec(alt.trim());
        return match === null ? [] : [{ number: Number(match[1]), place }];
      }),
    )
    .filter(isRow);
}

function isRow(row: readonly Numbered[]): boolean {
  return row.length >= fewest;
}
