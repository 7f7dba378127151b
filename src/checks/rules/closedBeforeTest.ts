import type { Judged } from '#core/assembled.ts';
import type { Section } from '#core/step.ts';
import { closingWork } from '../closingWork.ts';
import { defineCheck } from '../defineCheck.ts';
import { declaresOutcome } from '../expectWords.ts';
import { partKind } from '../partKind.ts';
import { fittedRows } from '../partWords.ts';
import { stepName } from '../say.ts';
import { sentencesOfSection } from '../stepSentences.ts';

export const closedBeforeTest = defineCheck({
  id: 'closed-before-test',
  title: 'The build is tried before its case is shut.',
  weight: 'tidy',
  audience: 'builder',
  words: 'English',
  why: 'A loose plug is found in a minute on the open bench, and after an hour with a prised lid.',
  basis: 'common practice: test before what is hard to undo',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const { build } = judged;
    const closing = closingWork(build);
    const steps = build.instructions.sections.filter(({ role }) => role === 'step');
    if (closing === null || !isElectric(judged)) return;
    const at = steps.indexOf(closing.sentence.section);
    // A step that tries and closes tells the order itself.
    if (steps.slice(0, at + 1).some((section) => tries(judged, section))) return;
    const test = steps.slice(at + 1).find((section) => tries(judged, section));
    const closed = steps[at];
    if (test === undefined || closed === undefined) return;
    yield {
      subjects: [`step:${closed.id}`, `step:${test.id}`],
      sides: [closed.place, closing.sentence.place, test.place],
      weight: closing.isSnapped ? 'slows' : 'tidy',
      basis: 'read',
      message: `${stepName(build, closed.id)} shuts the case; the first test comes after it, in ${stepName(build, test.id)}.`,
      consequence: 'A builder who finds a fault has to open again what was just shut, and may break it.',
      remedy: 'Move the test, or a short one, ahead of the step that shuts the case.',
    };
  },
  examples: {
    passes: [
      {
        title: 'tried on the open bench',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamp\n\nPlug the lead in.\n\n## Test it\n\nSwitch it on. The lamp glows.\n\n## Close it\n\nSnap the lid into place.\n\n## Test it again\n\nSwitch it on.\n',
          'parts.csv': 'Quantity,Description\n1,LED module\n1,Power supply 5 V 1 A\n',
        },
      },
      {
        title: 'nothing electric, and a lid that nobody shuts',
        files: {
          'guide.md':
            '# Jar\n\n## Fill it\n\nFill the jar.\n\n## Close it\n\nPress the lid on.\n\n## Test it\n\nTurn it over.\n',
          'parts.csv': 'Quantity,Description\n1,Jar\n1,Lid\n',
        },
      },
    ],
    fails: [
      {
        title: 'snapped shut, then tested',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamp\n\nPlug the lead in.\n\n## Close it\n\nSnap the lid into place.\n\n## Test the lamp\n\nSwitch it on. It should glow.\n',
          'parts.csv': 'Quantity,Description\n1,LED module\n1,Power supply 5 V 1 A\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: '‘Test the lamp’' }],
      },
      {
        title: 'glued shut, then measured',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamp\n\nSolder the lead.\n\n## Close it\n\nGlue the cover onto the base.\n\n## First power\n\n- Measure: PS1.PLUS – PS1.MINUS 5 V ± 0.2 V\n\nPlug it in.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,LED module\nPS1,1,Power supply 5 V 1 A\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: '‘First power’' }],
      },
    ],
  },
});

const electric: ReadonlySet<string> = new Set([
  'chip',
  'module',
  'led',
  'lights',
  'motor',
  'relay',
  'supply',
  'battery',
]);

function isElectric({ build }: Judged): boolean {
  return fittedRows(build).some((part) => electric.has(partKind(part) ?? 'other'));
}

const testHeading =
  /\b(?:test|tests|testing|try|trying|check|verify|bring (?:it|the \p{L}+) to life|first (?:power|run|start|light)|power(?:ing)? (?:it )?(?:up|on)|switch(?:ing)? (?:it )?on|smoke)\b/iu;
const testSentence =
  /\b(?:test (?:it|the|that|whether|each|all|every)|try (?:it|the|out)|power (?:it|the \p{L}+) (?:up|on)|power (?:up|on)|switch (?:it|the \p{L}+) on|switch on|make sure (?:it|that it|everything) works|verify (?:that|the))\b/iu;

function tries(judged: Judged, section: Section): boolean {
  return (
    testHeading.test(section.heading) ||
    declaresOutcomeUnderPower(judged, section) ||
    judged.facts.actions.some(
      ({ kind, told, step }) =>
        step === section.id && told === 'do' && (kind === 'measure' || kind === 'switch-on' || kind === 'load-code'),
    ) ||
    sentencesOfSection(section).some(({ text }) => testSentence.test(text))
  );
}

function declaresOutcomeUnderPower(judged: Judged, { id }: Section): boolean {
  const power = judged.facts.steps[id]?.power?.value;
  const measures = judged.facts.steps[id]?.measures.length ?? 0;
  return measures > 0 || ((power?.during === 'on' || power?.after === 'on') && declaresOutcome(judged, id));
}
