import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const temporaryStays = defineCheck({
  id: 'temporary-stays',
  title: 'What is put in for a while is taken out again.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A jumper that was meant for a test stays in, and the finished thing behaves as on the test bench.',
  basis: 'common practice; read from the words of the steps',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'temporary-stays' || stop.step === null) continue;
      yield {
        subjects: [`step:${stop.step}`],
        mark: 'temporary',
        basis: 'read',
        sides: stop.claim?.places ?? [],
        message: `The step ${stepName(build, stop.step)} puts something in for a while; from there on nothing is taken out.`,
        consequence: 'A builder does not know when to take it out, and may leave it in.',
        remedy: 'Say in the step where it has done its work that it comes out, or declare it with ‘Removes: …’.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'put in, and taken out later; a network is not on the bench',
        files: {
          'guide.md':
            '# Night light\n\n## Connect the pads\n\nTemporarily connect the two pads with a jumper. Connect to the temporary network of the lamp.\n\n## Close the lid\n\nRemove the jumper.\n',
        },
      },
      {
        title: 'declared as removed; a description that puts nothing in',
        files: {
          'guide.md':
            '# Night light\n\n## Connect the pads\n\n- Parts: JP1\n\nTape a temporary bridge over the pads.\n\n## Close the lid\n\n- Removes: JP1\n\nThe glow was temporary.\n',
          'parts.csv': 'Reference,Quantity,Description\nJP1,1,Jumper\n',
        },
      },
    ],
    fails: [
      {
        title: 'a jumper that stays',
        files: {
          'guide.md':
            '# Night light\n\n## Connect the pads\n\nTemporarily connect the two pads with a jumper.\n\n## Close the lid\n\nScrew the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'for a while' }],
      },
      {
        title: 'tape that stays',
        files: {
          'guide.md':
            '# Night light\n\n## Paint\n\nFit the temporary cover over the lens. Spray.\n\n## Close the lid\n\nScrew the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'taken out' }],
      },
    ],
  },
});
