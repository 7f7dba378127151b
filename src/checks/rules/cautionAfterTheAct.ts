import { cautionFor } from '#prose/cautions/library.ts';
import { defineCheck } from '../defineCheck.ts';
import { hazardsThatBite } from '../hazardsThatBite.ts';
import { stepName } from '../say.ts';

export const cautionAfterTheAct = defineCheck({
  id: 'caution-after-the-act',
  title: 'A caution stands before the work that it is about.',
  weight: 'slows',
  audience: 'builder',
  firm: true,
  words: 'English',
  why: 'A guide is followed line by line: what comes after the act is read too late.',
  basis: 'IEC/IEEE 82079-1 and ANSI Z535.6: a message after its step is an error',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build, facts }) {
    for (const found of hazardsThatBite(build, facts.hazards)) {
      const [caution] = found.cautions;
      if (found.cover !== 'late' || caution === undefined || found.step === null) continue;
      const entry = cautionFor(found.hazard);
      yield {
        subjects: [`step:${found.step}`],
        mark: found.hazard,
        sides: [found.places[0], caution.place],
        basis: found.basis,
        weight: entry.grave ? 'halts' : entry.word === 'notice' || entry.everyday ? 'tidy' : 'slows',
        message: `${stepName(build, found.step)} brings ${entry.name} (${found.why}); the first caution about it comes ${caution.step === found.step ? 'later in the step' : 'after it'}.`,
        consequence: 'A builder has done the dangerous work before reading the caution.',
        remedy: `Move the caution up, to the head of ${stepName(build, found.step)} or ahead of it.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'ahead of the work, and once for all',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n> **Caution:** The iron is hot and burns skin. Hold its handle. Do not breathe the fumes.\n\nSolder D1 to the board.\n\n## Fit the switch\n\nSolder SW1 to the board.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nSW1,1,Switch\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\n',
        },
      },
      {
        title: 'in the same paragraph',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1 to the board. The iron is hot and the fumes are bad for you: open the window and never touch the tip.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
        },
      },
    ],
    fails: [
      {
        title: 'further down in the step',
        files: {
          'guide.md':
            '# Box\n\n## Make the window\n\n- Parts: MP1\n- Power: off\n\nDrill a hole in the lid.\n\n> **Caution:** Drilling throws chips into eyes. Wear safety glasses.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nMP1,1,Lid\n',
        },
        expect: [
          { file: 'guide.md', line: 8, words: 'later in the step' },
          { file: 'guide.md', line: 10 },
        ],
      },
      {
        title: 'in a section on safety at the very end',
        files: {
          'guide.md':
            '# Bike light\n\n## Connect the cell\n\n- Parts: BT1\n- Power: off → on\n\nPlug the cell in.\n\n## Safety\n\nA lithium cell can catch fire when it is shorted.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,"Li-ion cell 18650, protected, 2600 mAh"\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'after it' }],
      },
    ],
  },
});
