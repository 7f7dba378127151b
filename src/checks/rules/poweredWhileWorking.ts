import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import { endpointId } from '#core/connection.ts';
import type { Place } from '#core/place.ts';
import { isJoin, type StepId } from '#core/step.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const poweredWhileWorking = defineCheck({
  id: 'powered-while-working',
  title: 'Nothing is wired, unwired or soldered while the circuit has power.',
  weight: 'halts',
  audience: 'builder',
  firm: true,
  words: 'English',
  why: 'A wire that slips on a live circuit can short the supply, destroy parts and burn the builder.',
  basis: 'common practice of electrical work: switch off before working on a circuit',
  grave: true,
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run(judged) {
    const { build, ledger } = judged;
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
    yield* toldUnderPower(judged, seen);
  },
  examples: {
    passes: [
      {
        title: 'the iron is switched on, the plug is pulled again, and what to do in case of a fault',
        files: {
          'guide.md':
            '# Night light\n\n## Heat the iron\n\nPlug in the soldering iron. Solder R1.\n\n## Try it\n\nInsert the battery and look. Remove the battery.\n\n## Add the switch\n\nSolder the switch.\n\n## Run it\n\n- Power: on\n\nIf it stays dark, solder the lamp again.\n',
        },
      },
      {
        title: 'a wire made after the words have pulled the plug',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n- Connects: D1.A – R1.2\n- Power: off → on\n\nSolder, then switch on.\n\n## Fit the switch\n\n- Parts: SW1\n- Connects: SW1.1 – D1.K\n\nUnplug it. Solder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nSW1,1,Switch\n',
        },
      },
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
        title: 'the words tell to solder while a cell is in, and under declared power',
        files: {
          'guide.md':
            '# Night light\n\n## Insert the cell\n\nInsert the battery and look.\n\n## Add the switch\n\nSolder the switch to the board.\n\n## Add the lamp\n\n- Power: on\n\nSolder the lamp.\n',
        },
        expect: [
          { file: 'guide.md', line: 9, words: 'solder' },
          { file: 'guide.md', line: 15, words: 'power on' },
        ],
      },
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

/** Work that the words of a step tell, under power that a fact declares or the words before have switched on. */
function* toldUnderPower({ build, ledger }: Judged, seen: ReadonlySet<StepId>): Iterable<FindingDraft> {
  const said = new Set<StepId>();
  for (const stop of ledger.stops) {
    if (stop.kind !== 'told-to-work-under-power' || stop.step === null) continue;
    // Where only words switched on, one finding tells what the whole guide leaves out.
    const isRead = stop.on.basis === 'read';
    if (seen.has(stop.step) || said.has(isRead ? stop.since : stop.step)) continue;
    said.add(isRead ? stop.since : stop.step);
    const [here, since] = [stepName(build, stop.step), stepName(build, stop.since)];
    yield {
      subjects: [`step:${stop.step}`],
      mark: stop.action.kind,
      basis: 'read',
      sides: [...(stop.claim?.places ?? []), ...stop.on.places],
      message:
        stop.since === stop.step
          ? `The step ${here} tells a builder to ${stop.action.verb.toLowerCase()} with the power on.`
          : `The step ${here} tells a builder to ${stop.action.verb.toLowerCase()}; the power has been on since ${since}, and no step has switched it off.`,
      consequence: 'A builder works on a live circuit: a slip can short the supply, destroy parts or burn a finger.',
      remedy: `Say before it to switch off and pull the plug, or declare ‘Power: off’ in ${here}.`,
    };
  }
}

/** The words with which a step switches on. */
function powerOf(build: Build, step: StepId): Place[] {
  const section = build.instructions.sections.find(({ id }) => id === step);
  return section?.facts.filter(({ label }) => label === 'power').map(({ place }) => place) ?? [];
}
