import type { Judged } from '#core/assembled.ts';
import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { declaresOutcome, saysOutcome } from '../expectWords.ts';
import { stepName } from '../say.ts';
import { sentencesIn } from '../sentencesIn.ts';
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
        sides: [section.place, ...testingWords(section)],
        basis: 'read',
        message: `The step ${stepName(judged.build, section.id)} is a test, and says nothing of what should come out.`,
        consequence: 'A builder cannot tell a build that works from one that does not.',
        remedy: 'Say what to see or measure when it is right, and what to do when it is not.',
      };
    }
    const load = loadWithoutResult(judged);
    if (load !== null) yield load;
    if (silent.length > 0 || load !== null || !isCircuit(judged) || !isWrittenOut(judged.build)) return;
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
        title: 'a sign that code runs, where the code is loaded first',
        files: {
          'guide.md':
            '# Pad\n\n## Flash the left half\n\nFlash the firmware. You should be able to see two rings.\n\n## Fit the lid\n\nPress it on.\n\n## Flash the right half\n\nFlash the firmware.\n',
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
        title: 'a test that asks whether it works',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Test the lamps\n\nSolder the cell on and check if all lamps work.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nS1,1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'Test the lamps' }],
      },
      {
        title: 'code that is loaded last, with no sign that it runs',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1. Hold a cell to it: it lights up.\n\n## Load the code\n\nPlug in the cable and flash the firmware.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nS1,1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'Load the code' }],
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

/** The first sentence that has the builder test something. */
function testingWords(section: Section): TextPlace[] {
  const first = sentencesIn(section).find(({ text }) =>
    /\b(?:check|test|try|verify|measure|probe|switch|press|see)\b/iu.test(text),
  );
  return first === undefined ? [] : [first.place];
}

/** What a builder sees, hears or reads once the code runs. */
const sign =
  /\b(?:should|will|must)\b(?: now| then)?(?: be able to)?(?: \p{L}+)? (?:see|hear|read|show|appear|light|glow|blink|start|print|display|(?:be (?:lit|on|off|visible|listed|dark|bright))|turn on|flash|change)\b|\b(?:lights? up|glows?|blinks?|flashes|beeps?|appears?|prints|shows|displays|reads|says|responds?|answers?|success\p{L}*|verified|bytes written|you (?:can )?(?:now )?(?:see|hear))\b/iu;

/** Code is loaded, and neither there nor in what follows does a word tell by what to know that it runs. */
function loadWithoutResult(judged: Judged): FindingDraft | null {
  const { build, facts } = judged;
  const sections = build.instructions.sections.filter(({ role }) => role === 'step' || role === 'prose');
  const loads = facts.actions.filter(({ kind, told }) => kind === 'load-code' && told === 'do');
  const at = sections.findLastIndex((section) => loads.some(({ place }) => isIn(place, section)));
  const section = sections[at];
  if (section === undefined) return null;
  const speaksOfLoading = (one: Section) =>
    facts.actions.some(({ kind, place }) => kind === 'load-code' && isIn(place, one)) ||
    isTest(one) ||
    /\b(?:flash\w*|firmware|program\w*|upload\w*|software|code|sketch)\b/iu.test(one.heading);
  const tellsSign = sections.some(
    (one, index) => (index >= at || speaksOfLoading(one)) && (declaresOutcome(judged, one.id) || showsSign(one)),
  );
  if (tellsSign || Object.values(facts.steps).some(({ expects }) => expects.length > 0)) return null;
  const own = loads.filter(({ place }) => isIn(place, section));
  return {
    subjects: section.role === 'step' ? [`step:${section.id}`] : [`file:${section.file}`],
    mark: 'load',
    sides: [...own.slice(0, 3).map(({ place }) => place), section.place],
    basis: 'read',
    message: `Code is loaded in ‘${section.heading}’, and nothing there or after it tells by what to know that it runs.`,
    consequence: 'A builder cannot tell whether it was loaded, nor whether the build works.',
    remedy: 'Say what the screen prints when it is done, and what the build does then.',
  };
}

function isIn(place: TextPlace, { file, blocks }: Section): boolean {
  const [from, to] = [blocks[0]?.place.span[0] ?? 0, blocks.at(-1)?.place.span[1] ?? 0];
  return place.file === file && place.span[0] >= from && place.span[0] < to;
}

function showsSign(section: Section): boolean {
  return blocksOfWords(section).some(({ quote }) => sign.test(quote.replace(/\bif\b[^.]*/giu, ' ')));
}

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
