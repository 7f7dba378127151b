import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import { tokensOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { guideWords } from '../guideWords.ts';
import { fittedRows, rowName } from '../partWords.ts';
import { type SameThing, sameThing } from '../sameThings.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const nameByAnotherWord = defineCheck({
  id: 'name-by-another-word',
  title: 'Steps call a part what the list calls it.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A beginner does not know that two words mean one thing, and looks for a part that is not there.',
  basis: 'IEC/IEEE 82079-1, in substance: one term for one thing',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run({ build }) {
    const heads = new Set(fittedRows(build).flatMap((part) => headOf(part)?.head ?? []));
    const guide = guideWords(build);
    for (const part of fittedRows(build)) {
      const named = headOf(part);
      const same = named === null ? null : sameThing(named.head);
      if (named === null || same === null || isExplained(guide, same)) continue;
      const others = same.others.filter((other) => !heads.has(tokensOf(other).join('')) || same.apart);
      const found = mentions(build, others, named.before, same);
      const [first] = found;
      if (first === undefined) continue;
      yield {
        subjects: [`part:${part.id}`],
        mark: 'other-name',
        sides: [...found.slice(0, 4), part.place],
        basis: 'read',
        message: `The steps speak of ‘${first.quote}’; the list calls such a thing ${rowName(part)}.`,
        consequence: 'A builder looks for a part of that name, and takes another one or thinks that it is lacking.',
        remedy: 'Use one name in the list and in the steps.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the name of the list, both names side by side, another thing of the list, and a verb',
        files: {
          'guide.md':
            '# Lamp\n\nThe spacers (standoffs) are of brass.\n\n## Fit the lamp\n\nMount the standoffs on the base. Bolt the lid to the spacers. Plug the power connector in. Push the MIDI jack into its hole. Press the power button.\n',
          'parts.csv':
            'Quantity,Description\n4,M3 spacer\n1,MIDI connector\n1,MIDI jack\n1,Toggle switch\n4,M3 screw\n',
        },
      },
      {
        title: 'sockets of other things',
        files: {
          'guide.md': '# Lamp\n\n## Fit the lamp\n\nSolder the socket of the lamp. Solder the MIDI connector.\n',
          'parts.csv': 'Quantity,Description\n1,MIDI connector\n1,Lamp\n',
        },
      },
    ],
    fails: [
      {
        title: 'standoffs for spacers',
        files: {
          'guide.md': '# Lamp\n\n## Fit the lid\n\nMount the stand-offs on the base.\n',
          'parts.csv': 'Quantity,Description\n4,M3 spacer\n1,Lamp\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'M3 spacer' }],
      },
      {
        title: 'a socket for a connector of the same kind',
        files: {
          'guide.md': '# Lamp\n\n## Fit the lid\n\nSolder the button and the MIDI sockets to the board.\n',
          'parts.csv': 'Quantity,Description\n2,MIDI connectors with five pins\n1,Button\n1,Lamp\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'MIDI sockets' }],
      },
    ],
  },
});

/** The noun that a row names its part by, and the word before it. */
function headOf({ description }: Part): { head: string; before: string | null } | null {
  const stretch = description.split(/[,;:()/|]|\s[–—-]\s|\s(?:for|with|of|to|from|in|on|by|per)\s/u)[0] ?? '';
  const words = stretch.split(/\s+/u).filter((word) => /^[\p{L}-]+$/u.test(word));
  const last = words.at(-1);
  if (last === undefined) return null;
  const head = tokensOf(last).join('');
  return { head, before: words.at(-2) ?? null };
}

/** 'Spacers (standoffs)', 'spacers or standoffs', 'standoffs, also called spacers'. */
function isExplained(guide: string, { name, others }: SameThing): boolean {
  const between = '(?:s|es)?\\W{1,4}(?:(?:or|also|called|a\\.k\\.a\\.|aka|known|as)\\W+){0,3}';
  return others.some(
    (other) =>
      new RegExp(`\\b${name}${between}${other}`, 'iu').test(guide) ||
      new RegExp(`\\b${other}${between}${name}`, 'iu').test(guide),
  );
}

const article = '(?:the|an?|these|those|all|both|each|your|two|three|four|five|six|eight|ten|\\d+|M\\d\\S*)';

/** Where steps speak of the thing by another of its names. */
function mentions(build: Build, others: readonly string[], before: string | null, { apart }: SameThing): TextPlace[] {
  if (others.length === 0 || (apart && (before === null || !/^\p{Lu}{2,}/u.test(before)))) return [];
  const noun = `(?:${others.map((other) => other.replace('-', '[- ]?')).join('|')})(?:s|es)?(?![\\p{L}\\p{N}-])`;
  const pattern = apart
    ? new RegExp(`(?<![\\p{L}\\p{N}-])${before}[- ]${noun}`, 'u')
    : new RegExp(`(?<=(?<![\\p{L}\\p{N}])${article} (?:\\p{L}+ )?)${noun}`, 'iu');
  const rows = fittedRows(build).map(({ description }) => description);
  return build.instructions.sections
    .filter(({ role }) => role === 'step')
    .flatMap((section) => sentencesIn(section))
    .flatMap(({ text, placeOf }) => {
      const match = pattern.exec(text);
      if (match === null || rows.some((row) => row.toLowerCase().includes(match[0].toLowerCase()))) return [];
      return [placeOf(match.index, match.index + match[0].length)];
    });
}
