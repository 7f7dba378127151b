import { defineCheck } from '../defineCheck.ts';
import { sentencesOfSection } from '../stepSentences.ts';

export const weakCriterion = defineCheck({
  id: 'weak-criterion',
  title: 'What should come out is said so that a faulty build cannot pass.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: '‘Some data’ comes from a board with a dead sensor as well, and what ‘looks right’ only the maker has seen.',
  basis:
    'IEC/IEEE 82079-1 (in substance): instructions state the expected result; a criterion that everything meets is none',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    const sections = build.instructions.sections.filter(({ role }) => role === 'step' || role === 'prose');
    for (const { section, text, place } of sections.flatMap(sentencesOfSection)) {
      const words = weak.map((pattern) => pattern.exec(text)?.[0]).find((found) => found !== undefined);
      if (words === undefined || telling.test(text)) continue;
      yield {
        subjects: [`step:${section.id}`],
        mark: `weak-${place.span[0] - section.place.span[0]}`,
        sides: [place],
        basis: 'read',
        message: `‘${words}’ is what a builder should find; a build with a fault can show that too.`,
        consequence: 'A builder takes a fault for success, or asks whether this is what was meant.',
        remedy: 'Say which lines, lights or values appear, and between which limits.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'values, words of the screen, and what it looks like',
        files: {
          'guide.md':
            '# Night light\n\n## Test it\n\nYou should see some data such as `light 420`. The lamp should be fine up to 60 °C. You should see “lamp ready”.\n\n## Close it\n\nPress the lid on. Some data sheets show it.\n',
        },
      },
      {
        title: 'talk of other things',
        files: {
          'guide.md':
            '# Night light\n\n## Test it\n\nIt should look right at you. You will see something else when the lamp is reversed: a dark window.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
    ],
    fails: [
      {
        title: 'some numbers on a screen',
        files: {
          'guide.md':
            '# Night light\n\n## Test it\n\nOpen the monitor. You should see the board printing some numbers.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'some numbers' }],
      },
      {
        title: 'a thing that should look fine',
        files: {
          'guide.md':
            '# Night light\n\n## Test it\n\nSwitch it on. Everything should look fine.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'should look fine' }],
      },
    ],
  },
});

const weak: readonly RegExp[] = [
  /\b(?:should|will|ought to) (?:now |then |also )?(?:see|get|hear|read|show|print|display|output|receive)\b[^.]*?\b(?:some (?:data|output|text|numbers?|values?|readings?|lines?|messages?|activity|kind of (?:output|data|reaction))|something(?! (?:else|wrong|other)))(?=[\s.,!]|$)/iu,
  /\b(?:should|must|ought to) (?:now |then |all )?(?:look|be|seem|feel|sound) (?:fine|good|ok(?:ay)?|alright|all right|right(?= *[.!,]| *$)|as it should)(?! (?:for|with|to|up|at|in)\b)/iu,
];
/** Something to compare with. */
const telling =
  /\d|[“"‘`][^”"’`]{2,}[”"’`]|\b(?:like (?:this|that|the)|such as|for example|e\.g\.|shown|below|following)\b|:/iu;
