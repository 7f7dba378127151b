import type { Action } from '#core/action.ts';
import type { Judged } from '#core/assembled.ts';
import type { StepId } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { isLive } from '#rehearsal/probe.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
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
  *run(judged) {
    const { build, ledger } = judged;
    yield* beforeSwitchedOn(judged);
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
      {
        title: 'a step that switches on by its words, and one after a step that says nothing of power',
        files: {
          'guide.md':
            '# Night light\n\n## Solder the lamp\n\n- Power: off\n\nSolder.\n\n## Test the rail\n\n- Power: on\n- Measure: D1.A – D1.K 3.0 V\n\nSlide S1 to on. Probe.\n\n## Rest\n\n- Power: off\n\nWait.\n\n## Test it again\n\n- Power: on\n- Measure: D1.A – D1.K 3.0 V\n\nPlug PS1 into the wall and probe.\n\n## Keep it\n\n- Power: off → on\n\nPlug it in for good.\n',
          'parts.csv': 'Reference,Quantity,Description\nPS1,1,Supply 5 V\nD1,1,LED\n',
        },
      },
    ],
    fails: [
      {
        title: 'a reading with the power on stands before the step that switches on',
        files: {
          'guide.md':
            '# Night light\n\n## Solder the lamp\n\n- Power: off\n\nSolder.\n\n## Test the rail\n\n- Power: on → off\n- Measure: PS1.PLUS – PS1.MINUS = 5.0 V\n\nProbe. Pull the cable.\n\n![The supply is plugged into the wall](rail.jpg)\n\n## Start it\n\n- Power: off → on\n\nPlug PS1 in. The lamp glows.\n',
          'parts.csv': 'Reference,Quantity,Description\nPS1,1,Supply 5 V\nD1,1,LED\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: 'Start it' }],
      },
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

/** Readings of steps that find the power on, after a step that left it off and before the one that switches on. */
function* beforeSwitchedOn(judged: Judged): Iterable<FindingDraft> {
  const { build, facts, ledger } = judged;
  for (const [index, { step, before }] of ledger.steps.entries()) {
    const { power, measures } = facts.steps[step] ?? {};
    if (power?.value.during !== 'on' || before.powered) continue;
    const live = (measures ?? []).filter(({ value }) => isLive(value));
    if (live.length === 0 || powerBefore(judged, index) !== 'off' || switchesOn(judged, step)) continue;
    const later = ledger.steps.slice(index + 1).find((one) => {
      const next = facts.steps[one.step]?.power?.value;
      return next?.during === 'off' && next.after === 'on';
    });
    if (later === undefined) continue;
    const there = stepName(build, later.step);
    yield {
      subjects: [`step:${step}`],
      mark: 'before-switched-on',
      sides: [...power.places, ...live.slice(0, 3).flatMap(({ places }) => places)],
      message: `The step ${stepName(build, step)} measures with the power on; it was left off, and ${there} is the next to switch on.`,
      consequence: 'A builder reads nothing and looks for a fault in good work.',
      remedy: `Put ${there} before this step, or say in this one how to switch on.`,
    };
  }
}

/** How the last step before that speaks of power leaves it. */
function powerBefore({ facts, ledger }: Judged, index: number): string | undefined {
  const told = ledger.steps.slice(0, index).flatMap(({ step }) => facts.steps[step]?.power ?? []);
  return told.at(-1)?.value.after;
}

function switchesOn({ build, facts }: Judged, step: StepId): boolean {
  const section = build.instructions.sections.find(({ id }) => id === step);
  // The words of a picture tell what it shows, not what to do.
  const isShown = ({ place }: Action) =>
    section?.pictures.some((one) => one.place.span[0] <= place.span[0] && place.span[1] <= one.place.span[1]) === true;
  const isTold = facts.actions.some(
    (action) =>
      action.step === step &&
      (action.kind === 'switch-on' || action.kind === 'plug-in') &&
      action.told !== 'not' &&
      !isShown(action),
  );
  const words = section === undefined ? [] : blocksOfWords(section).map(({ quote }) => quote);
  return (
    isTold ||
    /\b(?:to on|on again|connect|insert|power (?:it|up)|(?:switch|turn) \S+(?: \S+)? on)\b/i.test(words.join(' '))
  );
}
