import type { Judged } from '#core/assembled.ts';
import type { TextPlace } from '#core/place.ts';
import type { StepId } from '#core/step.ts';
import { grainOf } from '#notation/findDurations.ts';
import { defineCheck } from '../defineCheck.ts';
import { promisedTimes } from '../promisedTimes.ts';
import { numbered, stepName } from '../say.ts';

/**
 * Too long a promise may hold what no step tells: unpacking, breaks, clearing up. Half as much again is left to that
 * (common practice, from memory). A whole is no shorter than its parts: only rounding excuses too short a one.
 */
const besidesSteps = 1.5;

export const timeDiffers = defineCheck({
  id: 'time-differs',
  title: 'The time that the guide promises is about the sum of its steps.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Who plans one evening for two leaves a half-wired board on the table.',
  basis: 'JCGM 100:2008, 5.1.2, for the sum of rounded times; common practice for what lies between the steps',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const sum = sumOfSteps(judged);
    if (sum === null) return;
    for (const promised of promisedTimes(judged.build)) {
      const isShort = promised.most < sum.hands - sum.slack;
      const isLong = sum.isWhole && promised.least > (sum.most + sum.slack) * besidesSteps;
      if (!isShort && !isLong) continue;
      yield {
        subjects: ['build:time'],
        mark: promised.words,
        sides: [promised.place, ...sum.longest.slice(0, 4).map(({ place }) => place)],
        basis: 'read',
        message: `The guide says ‘${promised.words}’; ${sumInWords(judged, sum, isShort)}.`,
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
      {
        title: 'rounded to the hour, with a step that is left to the builder, and times of other things',
        files: {
          'guide.md':
            '# Night light\n\nTwo evenings, about three hours. It takes 24 hours to learn the light of a room. Six hours of glow on one charge.\n\n## Workshop\n\nInstall the compiler. This takes half an hour.\n\n## Fit the lamp\n\n- Time: 1 h 30 min\n\nSolder D1.\n\n## Close it\n\n- Time: 2 h\n\nGlue the lid on.\n\n## Paint it\n\n- Time: 4 h\n- Optional: for the garden\n\nPaint the lid.\n',
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
      {
        title: 'less than one step alone has, though another tells no time; no verb in the promise',
        files: {
          'guide.md':
            '# Night light\n\nTwo and a half hours at the table.\n\n## Fit the lamp\n\n- Time: 4 h 10 min\n\nSolder D1.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [
          { file: 'guide.md', line: 3, words: '‘Fit the lamp’' },
          { file: 'guide.md', line: 7, words: '1 more step tells no time' },
        ],
      },
      {
        title: 'in a table of facts, and far too long',
        files: {
          'guide.md':
            '# Night light\n\n| Level | easy |\n| --- | --- |\n| Time | fourteen hours |\n\n## Fit the lamp\n\n- Time: 2 h\n\nSolder D1.\n\n## Close it\n\n- Time: half an hour\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '2 h 30 min' }],
      },
    ],
  },
});

interface Sum {
  /** Minutes of work of the steps that everybody does: less is not possible. */
  readonly hands: number;
  /** Minutes of all steps, with waiting. */
  readonly most: number;
  /** What rounding may add or take: of independent values the root of the sum of squares (JCGM 100:2008, 5.1.2). */
  readonly slack: number;
  readonly isWhole: boolean;
  readonly silent: number;
  readonly longest: readonly StepTime[];
}

interface StepTime {
  readonly id: StepId;
  readonly hands: number;
  readonly wait: number;
  readonly forAll: boolean;
  readonly place: TextPlace;
}

function sumOfSteps({ build, facts }: Judged): Sum | null {
  const steps = build.instructions.sections.filter(({ role }) => role === 'step');
  const told = steps.flatMap(({ id }): StepTime[] => {
    const { minutes, optional, variant } = facts.steps[id] ?? {};
    const place = minutes?.places.find((one) => one.kind === 'text');
    if (!minutes || place === undefined) return [];
    return [{ id, ...minutes.value, forAll: !optional && !variant, place }];
  });
  if (told.length === 0) return null;
  const silent = steps.length - told.length;
  return {
    hands: told.reduce((sum, { hands, forAll }) => sum + (forAll ? hands : 0), 0),
    most: told.reduce((sum, { hands, wait }) => sum + hands + wait, 0),
    slack: Math.hypot(...told.map(({ hands, wait }) => grainOf(hands + wait) / 2)),
    // Of ‘10 min each’ nobody knows how often.
    isWhole: silent === 0 && !told.some(({ place }) => /\b(?:each|every|per)\b/iu.test(place.quote)),
    silent,
    longest: [...told].sort((a, b) => b.hands + b.wait - (a.hands + a.wait)),
  };
}

function sumInWords({ build }: Judged, { hands, most, silent, longest }: Sum, isShort: boolean): string {
  const [first] = longest;
  const work = isShort ? hands : most - longest.reduce((sum, { wait }) => sum + wait, 0);
  const wait = most - longest.reduce((sum, one) => sum + one.hands, 0);
  return [
    `its steps add up to ${inWords(work)}`,
    wait > 0 ? ` of work and ${inWords(wait)} of waiting` : '',
    first !== undefined && first.hands > work / 2
      ? `, of which ${stepName(build, first.id)} has ${inWords(first.hands)}`
      : '',
    silent > 0 ? `, and ${numbered(silent, 'more step')} ${silent === 1 ? 'tells' : 'tell'} no time` : '',
  ].join('');
}

function inWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), Math.round(minutes % 60)];
  return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : '']
    .filter((part) => part !== '')
    .join(' ');
}
