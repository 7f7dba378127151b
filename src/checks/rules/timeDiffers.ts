import type { Judged } from '#core/assembled.ts';
import type { Place } from '#core/place.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { placeInside } from '#prose/placeInside.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck } from '../defineCheck.ts';

export const timeDiffers = defineCheck({
  id: 'time-differs',
  title: 'The time that the guide promises is about the sum of its steps.',
  weight: 'tidy',
  audience: 'builder',
  words: 'English',
  why: 'Who plans one evening for two leaves a half-wired board on the table.',
  basis: 'common practice: the times of the steps, added up',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const sum = sumOfSteps(judged);
    if (sum === null) return;
    for (const { words, place, least, most } of promises(judged)) {
      if (least <= sum.most * 1.5 && most >= sum.hands / 1.5) continue;
      yield {
        subjects: ['build:time'],
        sides: [place, ...sum.places.slice(0, 4)],
        basis: 'read',
        message: `The guide says ‘${words}’; its steps add up to ${inWords(sum.hands)}${sum.most > sum.hands ? ` of work and ${inWords(sum.most - sum.hands)} of waiting` : ''}.`,
        consequence: 'A builder plans too little or too much time.',
        remedy: 'Correct the one that is wrong.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'about the same; printing counts for itself',
        files: {
          'guide.md':
            '# Night light\n\nThe work takes about two hours. Printing takes nine hours more.\n\n## Fit the lamp\n\n- Time: 50 min\n\nSolder D1.\n\n## Close it\n\n- Time: 1 h + 2 h wait\n\nGlue the lid on.\n',
        },
      },
      {
        title: 'too few steps give a time',
        files: {
          'guide.md':
            '# Night light\n\nThe work takes about two hours.\n\n## Fit the lamp\n\n- Time: 10 min\n\nSolder D1.\n\n## Close it\n\nPress the lid on.\n\n## Test it\n\nIt glows.\n',
        },
      },
    ],
    fails: [
      {
        title: 'one hour promised, three to do',
        files: {
          'guide.md':
            '# Night light\n\nThe build takes about an hour.\n\n## Fit the lamp\n\n- Time: 1 h 30 min\n\nSolder D1.\n\n## Close it\n\n- Time: 90 min\n\nGlue the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: '3 h' }],
      },
      {
        title: 'a long evening promised, ten minutes to do',
        files: {
          'guide.md':
            '# Night light\n\nTime needed: 4 to 5 hours.\n\n## Fit the lamp\n\n- Time: 5 min\n\nSolder D1.\n\n## Close it\n\n- Time: 5 min\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: '10 min' }],
      },
    ],
  },
});

interface Sum {
  readonly hands: number;
  /** With waiting. */
  readonly most: number;
  readonly places: readonly Place[];
}

/** Minutes of all steps; null unless four of five say theirs. */
function sumOfSteps({ build, facts }: Judged): Sum | null {
  const steps = build.instructions.sections.filter(({ role }) => role === 'step');
  const told = steps.flatMap(({ id }) => facts.steps[id]?.minutes ?? []);
  if (told.length < 2 || told.length < steps.length * 0.8) return null;
  const hands = told.reduce((sum, { value }) => sum + value.hands, 0);
  return {
    hands,
    most: told.reduce((sum, { value }) => sum + value.hands + value.wait, 0),
    places: told.flatMap(({ places }) => places),
  };
}

interface Promised {
  readonly words: string;
  readonly place: Place;
  readonly least: number;
  readonly most: number;
}

const count = '(?:\\d+(?:[.,]\\d+)?|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|half an)';
const spell = new RegExp(
  `\\b(${count})(?:\\s*(?:to|–|-|or)\\s*(${count}))?\\s*(hours?|hrs?|h|minutes?|mins?)\\b`,
  'iu',
);
const whole = /\b(?:takes?|needs?|needed|required|allow|plan|build time|duration|total)\b/iu;
const otherWork =
  /\b(?:print\w*|dry\w*|cur(?:e|es|ing)|charg\w*|batter\w*|ship\w*|deliver\w*|every|each|per|after|lasts?|step|wait\w*)\b/iu;

/** What the guide promises before the first step. */
function promises({ build }: Judged): Promised[] {
  const { sections } = build.instructions;
  const first = sections.findIndex(({ role }) => role === 'step');
  return sections.slice(0, Math.max(first, 0)).flatMap((section) =>
    blocksOfWords(section).flatMap((place) =>
      sentencesOf(place.quote).flatMap(({ text, start }) => {
        const match = spell.exec(text);
        if (match === null || !whole.test(text) || otherWork.test(text)) return [];
        const size = /^h/i.test(match[3] ?? '') ? 60 : 1;
        const least = numberOf(match[1] ?? '') * size;
        const words = text.replace(/\s+/g, ' ').trim();
        return [
          {
            words,
            place: placeInside(place, start + match.index, start + match.index + match[0].length),
            least,
            most: match[2] === undefined ? least : numberOf(match[2]) * size,
          },
        ];
      }),
    ),
  );
}

const named: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
  'half an': 0.5,
};

function numberOf(text: string): number {
  return named[text.toLowerCase()] ?? Number(text.replace(',', '.'));
}

function inWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), Math.round(minutes % 60)];
  return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : '']
    .filter((part) => part !== '')
    .join(' ');
}
