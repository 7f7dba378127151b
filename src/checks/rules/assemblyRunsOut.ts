import type { Build } from '#core/build.ts';
import type { StepId } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { counted, stepName } from '../say.ts';

export const assemblyRunsOut = defineCheck({
  id: 'assembly-runs-out',
  title: 'Steps take no more of a sub-assembly than earlier steps make.',
  weight: 'halts',
  audience: 'builder',
  why: 'A builder who made one of what is needed twice has to go back and start over, with parts that may be used up.',
  basis: 'common practice: keep count of what exists',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'assembly-used-up' || stop.step === null) continue;
      // A step that does not say how many it makes may be followed several times over.
      if (!stop.counted && tellsToRepeat(build, stop.maker)) continue;
      const [here, maker] = [stepName(build, stop.step), stepName(build, stop.maker)];
      const made = build.instructions.sections.find(({ id }) => id === stop.maker);
      yield {
        subjects: [`part:${slugOf(stop.name)}`, `step:${stop.step}`],
        sides: [
          ...(stop.claim?.places ?? []),
          ...(made?.facts.filter(({ label }) => label === 'makes') ?? []).map(({ place }) => place),
        ],
        weight: stop.counted ? 'halts' : 'slows',
        message: `The step ${here} takes ${counted(stop.wanted)} of ${stop.name}; ${stop.had === 0 ? 'none is' : `only ${counted(stop.had)} ${stop.had === 1 ? 'is' : 'are'}`} there after ${maker}.`,
        consequence: 'A builder has too few of them and has to go back and make more.',
        remedy: `Say in ${maker} how many to make, such as ‘${stop.name.replace(/\s*[×x]\s*\d+$/, '')} × ${stop.wanted}’, or correct the number here.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'two legs made, two legs used, one at a time',
        files: {
          'guide.md':
            '# Night light\n\n## Build the legs\n\n- Parts: rod × 4\n- Makes: leg × 2\n\nGlue two rods for each.\n\n## Mount the left leg\n\n- Parts: leg × 1\n\nScrew.\n\n## Mount the right leg\n\n- Parts: leg × 1\n\nScrew.\n',
          'parts.csv': 'Reference,Quantity,Description\n,4,Rod\n',
        },
      },
      {
        title: 'made once by the label, and three more by the words; named again without a number',
        files: {
          'guide.md':
            '# Night light\n\n## Build a leg\n\n- Parts: rod × 4\n- Makes: leg\n\nGlue. Make three more in the same way.\n\n## Mount them\n\n- Parts: leg × 4\n\nScrew.\n\n## Level them\n\n- Parts: leg\n\nTurn each one.\n',
          'parts.csv': 'Reference,Quantity,Description\n,4,Rod\n',
        },
      },
    ],
    fails: [
      {
        title: 'three wanted of two',
        files: {
          'guide.md':
            '# Night light\n\n## Build the legs\n\n- Parts: rod × 4\n- Makes: leg × 2\n\nGlue two rods for each.\n\n## Mount the legs\n\n- Parts: leg × 3\n\nScrew.\n',
          'parts.csv': 'Reference,Quantity,Description\n,4,Rod\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: 'only 2 are there' }],
      },
      {
        title: 'used up by an earlier step',
        files: {
          'guide.md':
            '# Night light\n\n## Build the lamp head\n\n- Parts: D1\n- Makes: 1 × lamp head\n\nSolder.\n\n## Mount it\n\n- Parts: lamp head × 1\n\nScrew.\n\n## Mount the other side\n\n- Parts: lamp head × 1\n\nScrew.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\n',
        },
        expect: [{ file: 'guide.md', line: 18, words: 'none is there' }],
      },
    ],
  },
});

function tellsToRepeat(build: Build, step: StepId): boolean {
  const section = build.instructions.sections.find(({ id }) => id === step);
  const words = [section?.heading ?? '', ...(section?.blocks.map(({ place }) => place.quote) ?? [])].join('\n');
  return /\b(?:repeat|again|another|others?|more|each|every|both|twice|times|same|two|three|four|five|six|eight|ten|\d+)\b/i.test(
    words,
  );
}
