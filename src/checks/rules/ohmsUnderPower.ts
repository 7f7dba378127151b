import type { Build } from '#core/build.ts';
import type { Place } from '#core/place.ts';
import type { StepId } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const ohmsUnderPower = defineCheck({
  id: 'ohms-under-power',
  title: 'Resistance is read, and shorts are looked for, before the power is on.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Ohms read on a live circuit are wrong and can harm the meter; a short that is looked for after switching on has burned by then.',
  basis: 'common practice of measuring: resistance is read on a circuit without power',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.step === null) continue;
      const here = stepName(build, stop.step);
      if (stop.kind === 'resistance-under-power') {
        yield {
          subjects: [`step:${stop.step}`],
          mark: slugOf(stop.text),
          sides: [...(stop.claim?.places ?? []), ...powerOf(build, stop.since)],
          message: `The step ${here} reads ${stop.text} while the power is on${stop.since === stop.step ? '' : ` since ${stepName(build, stop.since)}`}.`,
          consequence: 'A builder reads nonsense, looks for a fault in good work, and may harm the meter.',
          remedy: 'Declare ‘Power: off’ in the step, or take the reading before the power is on.',
        };
      }
      if (stop.kind === 'checked-after-power') {
        yield {
          subjects: [`step:${stop.step}`],
          mark: 'late',
          sides: [...(stop.claim?.places ?? []), ...stop.on.places],
          message: `The step ${here} looks for a short (${stop.text}) after ${stepName(build, stop.since)} has switched the power on; nothing is wired in between.`,
          consequence: 'A builder with a solder bridge learns of it from smoke.',
          remedy: `Take this reading before the power comes on in ${stepName(build, stop.since)}.`,
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'ohms first, power after; a second check after more was wired',
        files: {
          'guide.md':
            '# Night light\n\n## Wire\n\n- Parts: R1, PS1\n- Connects: R1.1 – PS1.PLUS\n\nSolder.\n\n## Test\n\n- Power: off → on\n- Measure: PS1.PLUS – PS1.GND > 1 kΩ\n\nProbe.\n\n## Wire on\n\n- Power: off\n- Connects: R1.2 – PS1.GND\n- Measure: PS1.PLUS – PS1.GND > 100 Ω\n\nProbe.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\n',
        },
      },
      {
        title: 'a bare board on USB is no circuit yet; a step that switches off may read ohms then',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\n- Power: on → off\n\nUpload.\n\n## Wire\n\n- Parts: R1, PS1\n- Connects: R1.1 – PS1.PLUS\n- Power: off\n\nSolder.\n\n## Test\n\n- Power: off\n- Measure: PS1.PLUS – PS1.GND > 1 kΩ\n\nProbe.\n\n## Run\n\n- Power: on → off\n- Measure: PS1.PLUS – PS1.GND > 1 kΩ\n\nSwitch off, then probe.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\n',
        },
      },
    ],
    fails: [
      {
        title: 'ohms with the power on',
        files: {
          'guide.md':
            '# Night light\n\n## Run\n\n- Power: off → on\n\nSwitch on.\n\n## Test\n\n- Measure: R1.1 – R1.2 150 Ω\n\nProbe.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'power is on' }],
      },
      {
        title: 'the check for shorts comes too late',
        files: {
          'guide.md':
            '# Night light\n\n## Wire\n\n- Parts: R1, PS1\n- Connects: R1.1 – PS1.PLUS\n- Power: off → on\n\nSolder, then switch on.\n\n## Test\n\n- Power: off\n- Measure: PS1.PLUS – PS1.GND > 1 kΩ\n\nProbe.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\n',
        },
        expect: [{ file: 'guide.md', line: 14, words: 'looks for a short' }],
      },
    ],
  },
});

function powerOf(build: Build, step: StepId): Place[] {
  const section = build.instructions.sections.find(({ id }) => id === step);
  return section?.facts.filter(({ label }) => label === 'power').map(({ place }) => place) ?? [];
}
