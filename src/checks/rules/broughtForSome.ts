import { slugOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const broughtForSome = defineCheck({
  id: 'brought-for-some',
  title: 'No step needs what only an optional step, or another variant, brings.',
  weight: 'halts',
  audience: 'builder',
  why: 'A builder who rightly left a step out stands before one that counts on it.',
  basis: 'common practice: follow each way through the guide on its own',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'brought-for-some' || stop.step === null) continue;
      const [here, brings] = [stepName(build, stop.step), stepName(build, stop.brings)];
      const bringer = build.instructions.sections.find(({ id }) => id === stop.brings);
      const label = stop.only === null ? 'optional' : 'variant';
      yield {
        subjects: [`part:${slugOf(stop.what)}`, `step:${stop.step}`],
        sides: [
          ...(stop.claim?.places ?? []),
          ...(bringer?.facts.filter((fact) => fact.label === label) ?? []).map(({ place }) => place),
        ],
        message:
          stop.only === null
            ? `The step ${here} needs ${stop.what}, which only the optional step ${brings} brings.`
            : `The step ${here} needs ${stop.what}, which only ${brings} brings, for the variant ${stop.only}.`,
        consequence: 'A builder who was free to leave that step out does not have it.',
        remedy:
          stop.only === null
            ? `Mark ${here} as optional too, part what belongs to the option into a step of its own, or let everyone do ${brings}.`
            : `Declare ‘Variant: ${stop.only}’ in ${here} too, or bring it for the other builders as well.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'an option is used by an option; what both variants make is there for all',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the switch\n\n- Parts: SW1\n- Optional: only if you want to switch it\n\nPush it in.\n\n## Wire the switch\n\n- Optional: with the switch\n- Connects: SW1.1 – R1.1\n\nSolder.\n\n## Build the wooden base\n\n- Variant: wood\n- Makes: base\n\nSaw.\n\n## Print the base\n\n- Variant: print\n- Makes: base\n\nPrint.\n\n## Mount\n\n- Parts: base, R1\n\nScrew.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nSW1,1,Switch\n',
        },
      },
      {
        title: 'the step that needs it takes it up itself',
        files: {
          'guide.md':
            '# Night light\n\n## Try the switch\n\n- Parts: SW1\n- Optional: yes\n\nPush it in.\n\n## Wire the switch\n\n- Parts: SW1, R1\n- Connects: SW1.1 – R1.1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nSW1,1,Switch\n',
        },
      },
      {
        title: 'two words for one variant, spelled in two ways',
        files: {
          'guide.md':
            '# Night light\n\n## Build the socket\n\n- Variant: USB-C\n- Makes: socket board\n\nSolder.\n\n## Mount the socket\n\n- Variant: usb c\n- Parts: socket board\n\nScrew.\n\n## Fit the cell\n\n- Variant: battery\n- Parts: BT1\n\nPush.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,Cell\n',
        },
      },
    ],
    fails: [
      {
        title: 'everyone wires a switch that is optional',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the switch\n\n- Parts: SW1\n- Optional: only if you want to switch it\n\nPush it in.\n\n## Wire it\n\n- Parts: R1\n- Connects: SW1.1 – R1.1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nSW1,1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 13, words: 'SW1' }],
      },
      {
        title: 'everyone mounts a bracket that only wall builders make',
        files: {
          'guide.md':
            '# Night light\n\n## Bend the bracket\n\n- Variant: wall\n- Makes: bracket\n\nBend.\n\n## Turn the foot\n\n- Variant: desk\n- Makes: foot\n\nTurn.\n\n## Mount\n\n- Parts: bracket\n\nScrew.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 19, words: 'wall' }],
      },
    ],
  },
});
