import type { Judged } from '#core/assembled.ts';
import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { maskMarkup } from '#prose/mentions/maskMarkup.ts';
import { placeInside } from '#prose/placeInside.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { numbered, stepName } from '../say.ts';

export const stepNumberWrong = defineCheck({
  id: 'step-number-wrong',
  title: 'A step, section or figure that the text sends to is there.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Numbers typed by hand stay behind when a step is put in between.',
  basis: 'common practice: typed numbers held against the headings as they are numbered',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    yield* numbers(judged);
    yield* neighbours(judged);
  },
  examples: {
    passes: [
      {
        title: 'numbers that are there, as headings and as items of a list',
        files: {
          'guide.md':
            '# Night light\n\n## Step 1: Fit the lamp\n\n1. Push D1 in.\n2. Turn it over.\n3. Solder it.\n\nIn step 2 you test it; repeat step 3 for the other lead.\n\n## Step 2: Test it\n\nIf it stays dark, go back to step 1.\n',
        },
      },
      {
        title: 'steps of others, steps of a scale, and numbers on the pictures',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n![Step 7](a.jpg)\n\nSee step 7. Follow step 12 of the data sheet. Turn it in steps of 5.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
      {
        title: 'the next step is there',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nIt is soldered in the next step.\n\n## Solder it\n\nUse the lamp from the previous step.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a number beyond the last step',
        files: {
          'guide.md':
            '# Night light\n\n## Step 1: Fit the lamp\n\nThe fuse comes in step 4.\n\n## Step 2: Close it\n\nPress the lid on, see step 2.\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'step 4' },
          { file: 'guide.md', line: 9, words: 'itself' },
        ],
      },
      {
        title: 'numbers where no step has one',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Close it\n\nTest as in step 1.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'no step has a number' }],
      },
      {
        title: 'nothing follows the last step',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nTake the board from the previous step.\n\n## Close it\n\nThe lid is glued in the next step.\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'no step before' },
          { file: 'guide.md', line: 9, words: 'no step after' },
        ],
      },
    ],
  },
});

/** 'step 4', 'steps 3 and 4'; not 'steps of 5', 'step 2 mm', nor a step of somebody else's text. */
const typedStep =
  /\b(?:see|in|from|of|after|before|until|to|as in|with|repeat|per|under|at)\s+(?:the\s+)?steps?\s+(\d{1,2})(?:\s*(?:[-–]|to|and)\s*(\d{1,2}))?(?![\d.,]*\s*(?:mm|cm|V|A|Ω|°|%|k?Hz|min|s)\b)(?!\s*(?:of|in|on|from)\s+(?:the|this|that|their|its|our|an?)\b)(?![\d:])/giu;

interface Typed {
  readonly n: number;
  readonly section: Section;
  readonly place: TextPlace;
}

function* numbers({ build }: Judged): Iterable<FindingDraft> {
  const { sections } = build.instructions;
  const steps = sections.filter(({ role }) => role === 'step');
  const typed = sections.flatMap(typedIn);
  if (typed.length === 0) return;
  const headed = new Map(sections.flatMap((section) => numberOf(section).map((n) => [n, section] as const)));
  const items = Math.max(0, ...sections.flatMap(({ blocks }) => blocks.map(itemsOf)));
  const onPictures = new Set(
    sections.flatMap(({ pictures }) =>
      pictures.flatMap(({ alt, title }) =>
        [...`${alt} ${title ?? ''}`.matchAll(/\bstep\s+(\d+)/gi)].map((match) => Number(match[1])),
      ),
    ),
  );
  const open = typed.filter(({ n }) => n > items && !onPictures.has(n));
  for (const { n, section, place } of open.filter(() => headed.size > 0)) {
    const target = headed.get(n);
    if (target !== undefined && target.id !== section.id) continue;
    yield {
      subjects: [`step:${section.id}`],
      mark: `step-${n}`,
      sides: [place],
      basis: 'read',
      message:
        target === undefined
          ? `The text sends to step ${n}; no step has that number.`
          : `The step ${stepName(build, section.id)} sends to step ${n}, which is itself.`,
      consequence: 'A builder searches for what is meant, or skips it.',
      remedy: 'Link to the heading that is meant: a link moves along with it, a number does not.',
    };
  }
  const [first] = open;
  if (headed.size > 0 || first === undefined) return;
  const beyond = open.filter(({ n }) => n > steps.length);
  yield {
    subjects: ['build:steps'],
    mark: 'unnumbered',
    sides: open.slice(0, 5).map(({ place }) => place),
    weight: beyond.length > 0 ? 'slows' : 'tidy',
    basis: 'read',
    message: `The text sends to ${open.length === 1 ? `step ${first.n}` : `${open.length} steps by number`}; no step has a number${beyond.length > 0 ? `, and there are ${numbered(steps.length, 'step')}` : ''}.`,
    consequence: 'A builder counts headings, and counts wrong as soon as one is added.',
    remedy: 'Link to the heading that is meant.',
  };
}

function typedIn(section: Section): Typed[] {
  return blocksOfWords(section).flatMap((place) => {
    const words = maskMarkup(place.quote);
    return [...words.matchAll(typedStep)].flatMap((match) => {
      const at = match.index + match[0].search(/steps?\s+\d/i);
      const here = placeInside(place, at, match.index + match[0].length);
      return [match[1], match[2]].flatMap((n) => (n === undefined ? [] : [{ n: Number(n), section, place: here }]));
    });
  });
}

function numberOf({ heading }: Section): number[] {
  const match = /^\s*(?:(?:step|part|schritt|étape|paso)\s+(\d+)|(\d+)(?=[.):\s]))/iu.exec(heading);
  return match === null ? [] : [Number(match[1] ?? match[2])];
}

function itemsOf(block: Section['blocks'][number]): number {
  return block.kind === 'list' && block.ordered ? block.start + block.items.length - 1 : 0;
}

function* neighbours({ build }: Judged): Iterable<FindingDraft> {
  const { sections } = build.instructions;
  const steps = sections.filter(({ role }) => role === 'step');
  const last = steps.at(-1);
  const [first] = steps;
  if (steps.length < 2 || last === undefined || first === undefined) return;
  const isLast = sections.at(-1) === last;
  const ends = [
    {
      section: last,
      words: isLast
        ? /\b(?:in|with|see) the (?:next|following) (?:step|section)\b/iu
        : /\b(?:in|with|see) the (?:next|following) step\b/iu,
      side: 'after',
    },
    { section: first, words: /\b(?:in|from|of|see) the previous step\b/iu, side: 'before' },
  ];
  for (const { section, words, side } of ends) {
    for (const place of blocksOfWords(section)) {
      const match = words.exec(maskMarkup(place.quote));
      if (match === null) continue;
      yield {
        subjects: [`step:${section.id}`],
        mark: side,
        sides: [placeInside(place, match.index, match.index + match[0].length)],
        basis: 'read',
        message: `The step ${stepName(build, section.id)} says ‘${match[0]}’; there is no step ${side} it.`,
        consequence: 'A builder looks for a step that is not there.',
        remedy: 'Name the step that is meant, or drop the words.',
      };
    }
  }
}
