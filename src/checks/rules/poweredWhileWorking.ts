import type { Build } from '#core/build.ts';
import { endpointId } from '#core/connection.ts';
import type { Place } from '#core/place.ts';
import { isJoin, type StepId } from '#core/step.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const poweredWhileWorking = defineCheck({
  id: 'powered-while-working',
  title: 'Nothing is wired or unwired while the circuit has power.',
  weight: 'halts',
  audience: 'builder',
  why: 'A wire that slips on a live circuit can short the supply, destroy parts and burn the builder.',
  basis: 'common practice of electrical work: switch off before working on a circuit',
  grave: true,
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    const seen = new Set<StepId>();
    for (const stop of ledger.stops) {
      if (stop.kind !== 'powered-while-working' || stop.step === null || seen.has(stop.step)) continue;
      seen.add(stop.step);
      const here = stepName(build, stop.step);
      const what = isJoin(stop.join)
        ? `${endpointId(stop.join.from)} – ${endpointId(stop.join.to)}`
        : `${stop.join.ref ?? stop.join.named}`;
      const byItself = stop.since === stop.step;
      yield {
        subjects: [`step:${stop.step}`],
        sides: [...(stop.claim?.places ?? []), ...powerOf(build, stop.since)],
        message: byItself
          ? `The step ${here} works on ${what} with the power on.`
          : `The step ${here} works on ${what}; ${stepName(build, stop.since)} switched the power on, and no step has switched it off since.`,
        consequence: 'A builder works on a live circuit: a slip can short the supply, destroy parts or burn a finger.',
        remedy: byItself
          ? 'Declare ‘Power: off’, or ‘Power: off → on’ where the step switches on at its end.'
          : `Declare ‘Power: off’ in ${here}, or switch off at the end of the step before.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'power comes last, and goes before the next wire',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n- Connects: D1.A – R1.2\n- Power: off → on\n\nSolder, then switch on.\n\n## Fit the switch\n\n- Parts: SW1\n- Connects: SW1.1 – D1.K\n- Power: off\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nSW1,1,Switch\n',
        },
      },
      {
        title: 'a lid may be screwed on under power, and a plug pushed in',
        files: {
          'guide.md':
            '# Night light\n\n## Plug it in\n\n- Parts: U1, J1\n- Connects: U1.USB – J1.USB\n- Power: on\n\nThe lamp glows.\n\n## Close the case\n\n- Parts: lid, M3 screw × 4\n\nScrew it shut.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,Controller board\nJ1,1,Charger lead\n,1,Lid\n,4,M3 screw\n',
          'wiring.csv': 'from,to,net\nU1.USB,J1.USB,USB\n',
        },
      },
    ],
    fails: [
      {
        title: 'nobody said to switch off again',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n- Connects: D1.A – R1.2\n- Power: off → on\n\nSolder, then switch on.\n\n## Fit the switch\n\n- Parts: SW1\n- Connects: SW1.1 – D1.K\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nSW1,1,Switch\n',
        },
        expect: [
          { file: 'guide.md', line: 14, words: 'switched' },
          { file: 'guide.md', line: 7 },
        ],
      },
      {
        title: 'a step that solders with the power on',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n- Power: on\n- Connects: D1.A – R1.2\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'power on' }],
      },
    ],
  },
});

/** The words with which a step switches on. */
function powerOf(build: Build, step: StepId): Place[] {
  const section = build.instructions.sections.find(({ id }) => id === step);
  return section?.facts.filter(({ label }) => label === 'power').map(({ place }) => place) ?? [];
}
