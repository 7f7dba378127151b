import type { Build } from '#core/build.ts';
import { type Endpoint, endpointId } from '#core/connection.ts';
import type { Key } from '#core/key.ts';
import type { Stop } from '#core/ledger.ts';
import type { StepId } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const usedBeforeMade = defineCheck({
  id: 'used-before-made',
  title: 'Nothing is joined, taken away or put to the test before an earlier step brought it.',
  weight: 'halts',
  audience: 'builder',
  why: 'A step in the wrong place makes a builder stop, search ahead, or take apart what was just soldered.',
  basis: 'common practice: run the steps in order and keep count of what exists',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      const draft = draftOf(build, stop);
      if (draft !== null) yield { ...draft, sides: [...(stop.claim?.places ?? []), ...placeOfStep(build, stop)] };
    }
  },
  examples: {
    passes: [
      {
        title: 'each part is there when it is joined; what no step takes up may lie ready',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n- Connects: D1.A – R1.2\n- Makes: lamp head\n\nSolder.\n\n## Bring in the supply\n\n- Parts: lamp head\n- Connects: R1.1 – PS1.PLUS\n\nScrew it in.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\n',
          'wiring.csv': 'from,to,net\nD1.A,R1.2,LAMP\nR1.1,PS1.PLUS,5V\n',
        },
      },
      {
        title: 'a bridge that is made, used and taken away',
        files: {
          'guide.md':
            '# Night light\n\n## Bridge the pads\n\n- Parts: D1, R1\n- Connects: D1.A – R1.2\n\nFor the test alone.\n\n## Take the bridge away\n\n- Removes: D1.A – R1.2\n\nGently.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
        },
      },
    ],
    fails: [
      {
        title: 'the terminal is read before anything is loaded',
        files: {
          'guide.md':
            '# Night light\n\n## Plug it in\n\n- Expect: the serial monitor shows "ready"\n\nPlug the board into the computer.\n\n## Load the code\n\n- Code: main.cpp\n\nUpload it.\n',
          'main.cpp': '#include <Arduino.h>\nvoid setup() { pinMode(5, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'ready' }],
      },
      {
        title: 'a wire to a part that comes two steps later',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the lamp\n\n- Parts: R1\n- Connects: R1.2 – D1.A\n\nSolder.\n\n## Fit the lamp\n\n- Parts: D1\n\nMind the flat side.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to,net\nR1.2,D1.A,LAMP\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'D1' }],
      },
      {
        title: 'the lamp head is mounted before it is built',
        files: {
          'guide.md':
            '# Night light\n\n## Mount the lamp head\n\n- Parts: lamp head, lid\n\nScrew it down.\n\n## Build the lamp head\n\n- Parts: D1, R1\n- Makes: lamp head\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n,1,Lid\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'lamp head' }],
      },
      {
        title: 'a part is taken off before it was put on',
        files: {
          'guide.md':
            '# Night light\n\n## Clear the pads\n\n- Removes: R1\n\nHeat both ends.\n\n## Fit the test resistor\n\n- Parts: R1\n\nTack it on.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'R1' }],
      },
    ],
  },
});

type Draft = Omit<FindingDraft, 'sides'>;

function draftOf(build: Build, stop: Stop): Draft | null {
  if (stop.step === null) return null;
  const step: Key = `step:${stop.step}`;
  const here = stepName(build, stop.step);
  switch (stop.kind) {
    case 'part-not-in-place': {
      if (stop.arrives === null) return null;
      const later = stepName(build, stop.arrives);
      return {
        subjects: [`part:${stop.part}`, step],
        message: `The step ${here} joins ${pair(stop.join)}, but ${stop.part} is taken up only in ${later}.`,
        consequence: 'A builder has no part to join there, and has to look ahead.',
        remedy: `Move the connection to ${later} or after it, or take up ${stop.part} here.`,
      };
    }
    case 'assembly-not-made': {
      if (stop.arrives === null) return null;
      const later = stepName(build, stop.arrives);
      return {
        subjects: [`part:${slugOf(stop.name)}`, step],
        message: `The step ${here} needs ${stop.name}, which is made only in ${later}.`,
        consequence: 'A builder does not have it yet, and has to look ahead.',
        remedy: `Put ${later} before ${here}.`,
      };
    }
    case 'removed-before-made': {
      const later = stepName(build, stop.arrives);
      return {
        subjects: [step],
        mark: slugOf(stop.what),
        message: `The step ${here} takes away ${stop.what}, which comes only in ${later}.`,
        consequence: 'A builder looks for something that is not there.',
        remedy: `Put ${later} before ${here}, or take the removal out.`,
      };
    }
    case 'code-not-loaded': {
      const later = stepName(build, stop.arrives);
      if (stop.onto === null) {
        return {
          subjects: [step],
          mark: 'code-expected',
          basis: 'read',
          message: `The step ${here} expects ‘${stop.text}’, which only code can show; code is loaded only in ${later}.`,
          consequence: 'A builder sees nothing and looks for a fault in good work.',
          remedy: `Put ${later} before ${here}, or move what to expect there.`,
        };
      }
      return {
        subjects: [step],
        mark: 'code',
        message: `The step ${here} measures ${stop.text}, where code on ${stop.onto} drives the pin; it is loaded only in ${later}.`,
        consequence: 'A builder reads something else and looks for a fault in the wiring.',
        remedy: `Put ${later} before ${here}, or measure after it.`,
      };
    }
    default:
      return null;
  }
}

/** The words of the later step, so that both places can be seen. */
function placeOfStep(build: Build, stop: Stop) {
  const arrives: StepId | null = 'arrives' in stop ? stop.arrives : null;
  return build.instructions.sections.filter(({ id }) => id === arrives).map(({ place }) => place);
}

function pair({ from, to }: { from: Endpoint; to: Endpoint }): string {
  return `${endpointId(from)} and ${endpointId(to)}`;
}
