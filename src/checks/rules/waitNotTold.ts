import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const waitNotTold = defineCheck({
  id: 'wait-not-told',
  title: 'Where something must dry, cure or charge, the step says how long.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A builder who goes on too early pulls the joint apart; one who waits to be sure loses a day.',
  basis: 'common practice; read from the words of the step',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'wait-untold' || stop.step === null) continue;
      yield {
        subjects: [`step:${stop.step}`],
        mark: 'wait',
        basis: 'read',
        sides: stop.claim?.places ?? [],
        message: `The step ${stepName(build, stop.step)} says ‘${stop.what}’ and not how long, nor by what sign it is done.`,
        consequence: 'A builder goes on too early, or waits longer than needed.',
        remedy: 'Write the time into the text, or declare it: ‘Time: 10 min + 2 h wait’.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'a time in words, in the fact, by a sign, or by the label of the glue',
        files: {
          'guide.md':
            '# Night light\n\n## Glue the lens\n\nGlue it. Let it dry for 20 minutes.\n\n## Mount it\n\n- Time: 5 min + 2 h wait\n\nLet the paint dry.\n\n## Charge the cell\n\nLet the cell charge until the light turns green.\n\n## Fit the cap\n\nLet it cure as long as the label says.\n\n## Paint the box\n\nLeave it to dry overnight.\n',
        },
      },
      {
        title: 'other meanings: to set aside, to be told not to',
        files: {
          'guide.md':
            '# Night light\n\n## Glue the lens\n\nLet us set the board aside. Do not let the glue dry on the lens.\n',
        },
      },
    ],
    fails: [
      {
        title: 'glue that must cure',
        files: {
          'guide.md':
            '# Night light\n\n## Glue the lens\n\nGlue the lens in. Let the glue cure.\n\n## Mount it\n\nMount it.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'how long' }],
      },
      {
        title: 'a cell that must charge',
        files: {
          'guide.md':
            '# Night light\n\n## Glue the lens\n\nSolder.\n\n## Mount it\n\nPlug in the charger and leave the cell to charge.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'charge' }],
      },
    ],
  },
});
