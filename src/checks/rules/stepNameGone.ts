import type { Build } from '#core/build.ts';
import type { LogNote } from '#core/log.ts';
import type { TextPlace } from '#core/place.ts';
import { slugOf, tokensOf } from '#notation/names.ts';
import { maskMarkup } from '#prose/mentions/maskMarkup.ts';
import { placeInside } from '#prose/placeInside.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';

export const stepNameGone = defineCheck({
  id: 'step-name-gone',
  title: 'A step or section that log or text call by its name is there under that name.',
  weight: 'slows',
  audience: 'builder',
  why: 'A note from the bench whose step was renamed no longer turns up beside that step, and its mistake is made again.',
  basis: 'common practice: names written by hand are held against the headings',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    const headings = build.instructions.sections.map(({ heading }) => heading).filter((one) => one !== '');
    for (const note of build.log) {
      for (const { name, place } of namedIn(note)) {
        if (isThere(build, name)) continue;
        yield {
          ...gone(name, headings, place),
          weight: note.mistake === null && note.remedy === null ? 'tidy' : 'slows',
          message: `The log speaks of the step ‘${name}’; the guide has no heading of that name.${nearest(name, headings)}`,
          consequence:
            'The note does not turn up beside its step: a builder makes the mistake again that was made here.',
        };
      }
    }
    for (const { name, place } of namedInText(build)) {
      if (isThere(build, name)) continue;
      yield {
        ...gone(name, headings, place),
        basis: 'read',
        message: `The text sends to ‘${name}’; the guide has no heading of that name.${nearest(name, headings)}`,
        consequence: 'A builder searches for what is meant, or skips it.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'by heading, by number, by slug, in part, without the number, and several at once',
        files: {
          'guide.md':
            '# Night light\n\nSee the step ‘Close it’.\n\n## 1. Fit the lamp\n\nSolder D1.\n\n## 2. Close it\n\nPress the lid on.\n',
          'log.md':
            '# Log\n\n## 2026-03-01\n\nstep: Fit the lamp\n\n## 2026-03-02\n\nstep: 2\n\n## 2026-03-03\n\nstep: 2-close-it\n\n## 2026-03-04\n\nstep: Fit the lamp, and close it\n\n## 2026-03-05\n\nstep: 1. Fit the lamp\nstep: Step 2: close it!\n',
        },
      },
      {
        title: 'sections of what somebody else wrote',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1; see the section ‘Soldering’ of the data sheet. The manual has a section “Heat” too. Press “Start”.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a heading that was renamed, and one that is gone',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the red lamp\n\nSolder D1. It is tested in the step “Try it out”.\n\n## Close it\n\nPress the lid on.\n',
          'log.md':
            '# Log\n\n## 2026-03-01\n\nIt was late.\n\nmistake: The lamp was fitted the wrong way round\nstep: Fit the lamp\n\n## 2026-03-02\n\nIt works.\n',
        },
        expect: [
          { file: 'log.md', line: 8, words: 'nearest is ‘Fit the red lamp’' },
          { file: 'guide.md', line: 5, words: 'Try it out' },
        ],
      },
      {
        title: 'a note beyond the last step',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Close it\n\nPress the lid on.\n',
          'log.md': '# Log\n\n## 2026-03-01\n\nThe lid is tight.\n\nstep: 7\n\n## 2026-03-02\n\nIt works.\n',
        },
        expect: [{ file: 'log.md', line: 7, words: '7' }],
      },
    ],
  },
});

interface Named {
  readonly name: string;
  readonly place: TextPlace;
}

function gone(
  name: string,
  headings: readonly string[],
  place: TextPlace,
): Omit<FindingDraft, 'message' | 'consequence'> {
  return {
    subjects: [`file:${place.file}`],
    mark: slugOf(name),
    sides: [place],
    remedy:
      nearest(name, headings) === ''
        ? 'Write the heading that is meant, or drop the name.'
        : 'Write the heading as it stands in the guide.',
  };
}

/** The lines `step: …` of a note. */
function namedIn({ step, place }: LogNote): Named[] {
  const lines = [
    ...place.quote.matchAll(/^[ \t]*(?:[-*+][ \t]+)?[*_]*step[*_]*[ \t]*[:：][*_]*[ \t]*(\S.*?)[ \t]*$/gim),
  ];
  if (step === null) return [];
  return lines.map((match) => {
    const name = match[1] ?? '';
    const at = match.index + match[0].lastIndexOf(name);
    return { name, place: placeInside(place, at, at + name.length) };
  });
}

const called = /\b(?:step|section|chapter)s?\s+(?:[‘“"„«](?=\S))([^‘’“”"„«»\n]{3,60}?)[’”"“»]/giu;
const ofOthers =
  /\b(?:data ?sheets?|manual|book|web ?site|page|tutorial|video|menu|app|window|dialog|wiki|documentation|docs|handbook|standard|repository)\b/i;

function namedInText(build: Build): Named[] {
  return build.instructions.sections.flatMap(blocksOfWords).flatMap((place) => {
    const words = maskMarkup(place.quote);
    return [...words.matchAll(called)].flatMap((match) => {
      const before =
        words
          .slice(0, match.index)
          .split(/[.!?;]\s/)
          .at(-1) ?? '';
      const after = words.slice(match.index + match[0].length).split(/[.!?;](?:\s|$)/)[0] ?? '';
      if (ofOthers.test(`${before} ${after}`) || /^\s+(?:of|in|on|from|at)\b/i.test(after)) return [];
      return [{ name: match[1] ?? '', place: placeInside(place, match.index, match.index + match[0].length) }];
    });
  });
}

/** Makers write a name in part, with its number or without, or several in one line. */
function isThere(build: Build, name: string): boolean {
  const { sections } = build.instructions;
  const number = /^(?:step\s+)?(\d+)$/i.exec(name.trim())?.[1];
  if (number !== undefined) return Number(number) <= sections.length;
  const slug = bare(name);
  return sections.some(({ id, heading }) => {
    const own = bare(heading);
    return slugOf(name) === id || (own !== '' && (slug === own || slug.includes(own) || own.startsWith(slug)));
  });
}

function bare(name: string): string {
  return slugOf(name.replace(/^\s*(?:(?:step|part)\s+)?\d+\s*[.):–-]*\s*/i, ''));
}

/** The heading that shares most words with a name, as a sentence; empty where none comes near. */
function nearest(name: string, headings: readonly string[]): string {
  const words = new Set(tokensOf(name));
  const likeness = (heading: string) => {
    const own = new Set(tokensOf(heading));
    return [...own].filter((word) => words.has(word)).length / Math.max(own.size, words.size);
  };
  const [best] = headings.toSorted((a, b) => likeness(b) - likeness(a));
  return best !== undefined && likeness(best) >= 0.4 ? ` The nearest is ‘${best}’.` : '';
}
