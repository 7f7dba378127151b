import type { Judged } from '#core/assembled.ts';
import type { Section } from '#core/step.ts';
import { defineCheck } from '../defineCheck.ts';
import { declaresOutcome, saysOutcome } from '../expectWords.ts';
import { stepName } from '../say.ts';
import { isWrittenOut } from '../writtenGuide.ts';

export const testWithoutResult = defineCheck({
  id: 'test-without-result',
  title: 'The guide says how to test the build, and each test says what comes out when all is well.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Without an expected result a test cannot fail, and the fault shows only when the lid is on.',
  basis: 'IEC/IEEE 82079-1 (in substance): instructions state the expected result',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const steps = judged.build.instructions.sections.filter(({ role }) => role === 'step');
    const silent = steps.filter((section) => isTest(section) && !saysOutcome(judged, section));
    for (const section of silent) {
      yield {
        subjects: [`step:${section.id}`],
        sides: [section.place],
        basis: 'read',
        message: `The step ${stepName(judged.build, section.id)} is a test, and says nothing of what should come out.`,
        consequence: 'A builder cannot tell a build that works from one that does not.',
        remedy: 'Say what to see or measure when it is right, and what to do when it is not.',
      };
    }
    if (silent.length > 0 || !isCircuit(judged) || !isWrittenOut(judged.build)) return;
    const last = steps.at(-1);
    if (last === undefined || tells(judged, steps)) return;
    yield {
      subjects: ['build:test'],
      sides: [last.place],
      basis: 'read',
      message: `None of the ${steps.length} steps tests the build or says what to see or measure when it works.`,
      consequence: 'A builder who made one mistake learns of it at the end, and has nothing to compare with.',
      remedy: 'End a stage with a test: what to do, where to look or probe, and what should be there.',
    };
  },
  examples: {
    passes: [
      {
        title: 'a declared result, a result in words, and a check that is its own',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1. Check that it sits flat.\n\n## Test the lamp\n\n- Expect: it glows\n\nHold a cell to its leads.\n\n## Test the switch\n\nPress it. The lamp should go out.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nS1,1,Switch\n',
        },
      },
      {
        title: 'an empty shell has nothing to test; a page has only begun',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' },
      },
    ],
    fails: [
      {
        title: 'a test that cannot fail',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Test the lamp\n\nHold a cell to its leads.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nS1,1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'Test the lamp' }],
      },
      {
        title: 'no test in the whole guide',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nS1,1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'None of the 3 steps' }],
      },
    ],
  },
});

function isTest({ heading, blocks, facts }: Section): boolean {
  if (blocks.length + facts.length === 0) return false;
  return /^\W*(?:\d+[.)]?\s*|step \d+\W*)?(?:test|try|verify|(?:first|final|quick|power|smoke|function(?:al)?) test)\b/iu.test(
    heading,
  );
}

/** Parts that a current can flow through, in lists, wiring or work. */
function isCircuit({ build, facts }: Judged): boolean {
  return (
    build.connections.length + build.sources.length > 0 ||
    facts.actions.some(({ kind }) => kind === 'solder' || kind === 'wire')
  );
}

/** A fact, a heading or words that tell of a test anywhere in the guide: whoever wrote one thought of it. */
function tells(judged: Judged, steps: readonly Section[]): boolean {
  if (steps.some(({ id }) => declaresOutcome(judged, id))) return true;
  return judged.build.instructions.sections.some(
    (section) =>
      /\b(?:test\w*|try|debug\w*|trouble\w*|check\w*|use|using|first (?:power|run|start)|power\w*)\b/iu.test(
        section.heading,
      ) || section.blocks.some(({ place }) => testWords.test(place.quote)),
  );
}

const testWords =
  /\b(?:test(?:s|ed|ing)?|should (?:now )?(?:see|hear|read|show|light|glow|blink|be able)|lights? up|glows?|blinks?|(?:double-)?check (?:if|that|whether|the)|verify|make sure|multimeter|continuity|works?)\b/iu;
