import type { TextPlace } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import { defineCheck } from '../defineCheck.ts';
import { maskUnread } from '../maskUnread.ts';
import { proseOf } from '../proseOf.ts';

export const nameTwoWays = defineCheck({
  id: 'name-two-ways',
  title: 'A name is spelled in one way.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'Whoever searches by the wrong spelling finds nothing.',
  basis: 'common practice of copy-editing: names with a number that differ by one letter',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const pages = new Set([...build.instructions.sections, ...build.beside].map(({ file }) => file));
    const spelled = new Map<string, TextPlace[]>();
    for (const source of proseOf(build).filter(({ file }) => pages.has(file))) {
      for (const match of maskUnread(source).matchAll(named)) {
        const place = placeOf(source, [match.index, match.index + match[0].length]);
        spelled.set(match[0], [...(spelled.get(match[0]) ?? []), place]);
      }
    }
    const names = [...spelled.entries()].sort(([, a], [, b]) => a.length - b.length);
    for (const [index, [name, places]] of names.entries()) {
      const other = names.slice(index + 1).find(([one]) => isSlip(one, name));
      if (other === undefined) continue;
      const [usual, usualPlaces] = other;
      yield {
        subjects: ['build:names'],
        mark: [name, usual].sort().join('-'),
        sides: [...places.slice(0, 3), ...usualPlaces.slice(0, 2)],
        message: `The text writes ${name} (${places.length} ×) and ${usual} (${usualPlaces.length} ×).`,
        consequence: 'A reader who looks for the name may look for the wrong one.',
        remedy: 'Find out which spelling holds, and keep to it.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'names that differ by more, by their number, or by a letter in the place of another',
        files: {
          'guide.md':
            '# Lamp\n\nThe Moth3 board fits where the Moth4 did. Lamp12 is no Lump12. Take BC547, not BD547. Bee7 and Beee7 are short.\n\n## Fit it\n\nSolder D1.\n',
        },
      },
      {
        title: 'one spelling, and addresses with another',
        files: {
          'guide.md':
            '# Lamp\n\nThe [Hollow42](https://code.example/Holow42) is like the Hollow42.\n\n## Fit it\n\nSolder D1.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a letter doubled',
        files: {
          'guide.md':
            '# Lamp\n\nIt takes the parts of the Holow42. The Hollow42 is older. Look at the Hollow42 for its case.\n\n## Fit it\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'Holow42 (1 ×) and Hollow42 (2 ×)' }],
      },
      {
        title: 'two letters swapped, on another page',
        files: {
          'guide.md': '# Lamp\n\nLike the Brandt9. See [more](more.md).\n\n## Fit it\n\nSolder D1.\n',
          'more.md': '# More\n\nThe Barndt9 has more of it.\n',
        },
        expect: [{ file: 'more.md', line: 3, words: 'Barndt9' }],
      },
    ],
  },
});

const named = /(?<![\p{L}\p{N}_./-])\p{Lu}\p{Ll}{3,}\d{1,4}(?![\p{L}\p{N}_])/gu;

/** Whether two names share their number and differ by a doubled letter or by two letters that changed places. */
function isSlip(a: string, b: string): boolean {
  const [letters, others] = [a.replace(/\d+$/u, ''), b.replace(/\d+$/u, '')].map((name) => name.toLowerCase());
  if (letters === undefined || others === undefined || letters === others) return false;
  if (a.slice(letters.length) !== b.slice(others.length)) return false;
  const single = (word: string) => word.replace(/(\p{L})\1+/gu, '$1');
  if (single(letters) === single(others)) return Math.abs(letters.length - others.length) === 1;
  if (letters.length !== others.length) return false;
  const at = [...letters].findIndex((letter, index) => letter !== others[index]);
  return (
    letters[at] === others[at + 1] && letters[at + 1] === others[at] && letters.slice(at + 2) === others.slice(at + 2)
  );
}
