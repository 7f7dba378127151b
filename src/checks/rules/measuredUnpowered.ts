import { slugOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const measuredUnpowered = defineCheck({
  id: 'measured-unpowered',
  title: 'A reading that needs power is taken with the power on.',
  weight: 'slows',
  audience: 'builder',
  why: 'A builder who reads 0 V where 3.3 V are promised looks for a fault that is not there.',
  basis: 'common practice: volts, amperes and hertz are read on a live circuit',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'measured-unpowered' || stop.step === null) continue;
      const here = stepName(build, stop.step);
      yield {
        subjects: [`step:${stop.step}`],
        mark: slugOf(stop.text),
        sides: stop.claim?.places ?? [],
        message: `The step ${here} measures ${stop.text} while the power is off.`,
        consequence: 'A builder reads nothing and looks for a fault in good work.',
        remedy: 'Declare ‘Power: off → on’ where the step switches on before measuring, or move the reading.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'ohms with the power off, volts after it is on',
        files: {
          'guide.md':
            '# Night light\n\n## Test for shorts\n\n- Power: off\n- Measure: PS1.PLUS – PS1.MINUS > 1 kΩ\n\nProbe.\n\n## Switch on\n\n- Power: off → on\n- Measure: PS1.PLUS – PS1.MINUS = 5.0 V\n\nProbe.\n',
          'parts.csv': 'Reference,Quantity,Description\nPS1,1,Supply 5 V\nD1,1,LED\n',
        },
      },
      {
        title: 'a cell, a diode test and a drained capacitor need no power',
        files: {
          'guide.md':
            '# Night light\n\n## Test the parts\n\n- Power: off\n- Measure: BT1.PLUS – BT1.MINUS = 1.5 V\n- Measure: D1.A – D1.K 0.6 V in the diode test\n- Measure: C1.1 – C1.2 < 0.1 V\n\nProbe.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,AA cell\nD1,1,Diode 1N4148\nC1,1,Capacitor 100 µF\n',
        },
      },
    ],
    fails: [
      {
        title: 'volts with the power off',
        files: {
          'guide.md':
            '# Night light\n\n## Test the rail\n\n- Power: off\n- Measure: PS1.PLUS – PS1.MINUS = 5.0 V\n\nProbe.\n',
          'parts.csv': 'Reference,Quantity,Description\nPS1,1,Supply 5 V\nD1,1,LED\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'power is off' }],
      },
      {
        title: 'the step that switches on comes after the reading',
        files: {
          'guide.md':
            '# Night light\n\n## Test the rail\n\n- Measure: PS1.PLUS – PS1.MINUS = 3.3 V\n\nProbe.\n\n## Switch on\n\n- Power: off → on\n\nThe lamp glows.\n',
          'parts.csv': 'Reference,Quantity,Description\nPS1,1,Supply 3.3 V\nD1,1,LED\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '3.3 V' }],
      },
    ],
  },
});
