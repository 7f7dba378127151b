import type { Judged } from '#core/assembled.ts';
import type { Place } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { actionsOfStep } from '#rehearsal/actionsOfStep.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const powerUnchecked = defineCheck({
  id: 'power-unchecked',
  title: 'Before power is first switched on, a builder looks for shorts and reversed parts.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A bridge of solder between supply and ground is found by a meter in a minute, or by smoke in a second.',
  basis: 'common practice: measure the supply against ground before first power',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const steps = judged.build.instructions.sections.filter(({ role }) => role === 'step');
    const at = steps.findIndex((section) => switchesOn(judged, section) !== null);
    const step = steps[at];
    const side = step === undefined ? null : switchesOn(judged, step);
    if (step === undefined || side === null) return;
    const before = steps.slice(0, at + 1);
    if (!before.some((section) => isSoldered(judged, section))) return;
    const all = judged.build.instructions.sections;
    const upTo = all.slice(0, all.indexOf(step) + 1);
    if (upTo.some((section) => looksAfter(judged, section))) return;
    // A check that comes too late is another matter.
    if (steps.slice(at + 1).some((section) => readsOhms(judged, section))) return;
    yield {
      subjects: [`step:${step.id}`],
      sides: [side],
      basis: 'read',
      message: `The step ${stepName(judged.build, step.id)} switches on what was soldered before; no word up to there asks to look for shorts or reversed parts.`,
      consequence: 'One bridge of solder or one reversed part destroys others at the first power.',
      remedy: 'Add a check before it: ohms between supply and ground, the way round of parts, the plug of the supply.',
    };
  },
  examples: {
    passes: [
      {
        title: 'ohms before power',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Power: off\n\nSolder it.\n\n## Switch on\n\n- Power: off → on\n- Measure: PS1.PLUS – PS1.MINUS > 1 kΩ\n\nMeasure, then plug in.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nPS1,1,Supply 5 V\n',
        },
      },
      {
        title: 'a look over everything, in words; and a thing that plugs together',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n\nSolder it. Inspect the joints for bridges.\n\n## Switch on\n\n- Power: off → on\n\nPlug PS1 in.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nPS1,1,Supply 5 V\n',
        },
      },
    ],
    fails: [
      {
        title: 'soldered and switched on',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n\nSolder it.\n\n## Switch on\n\n- Power: off → on\n\nPlug PS1 in. The lamp glows.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nPS1,1,Supply 5 V\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'Switch on' }],
      },
      {
        title: 'the same in plain words',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Power it up\n\nSwitch on the supply. The lamp glows.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nS1,1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'Power it up' }],
      },
    ],
  },
});

/** Where a step brings power on: declared, or told in words. An iron that is switched on is no circuit. */
function switchesOn({ build, facts }: Judged, { id }: Section): Place | null {
  const power = facts.steps[id]?.power;
  if (power?.value.after === 'on' || power?.value.during === 'on') return power.places[0] ?? null;
  const action = actionsOfStep(facts, id).find(({ kind, told, place }) => {
    if (told !== 'do' || (kind !== 'switch-on' && kind !== 'plug-in')) return false;
    const rest = build.texts.get(place.file)?.text.slice(place.span[1], place.span[1] + 60) ?? '';
    const isTool =
      /^[^.]*\b(?:iron|gun|printer|station|computer|laptop|light|fan|meter|multimeter|cable into|header|connector|module|sensor)\b/i;
    const isPower = /^[^.]*\b(?:supply|adapter|adaptor|battery|charger|usb|power|mains|wall|socket outlet|plug)\b/i;
    return !isTool.test(rest) && (kind === 'switch-on' || isPower.test(rest));
  });
  return action?.place ?? null;
}

function isSoldered({ facts }: Judged, { id }: Section): boolean {
  return actionsOfStep(facts, id).some(({ kind, told }) => kind === 'solder' && told === 'do');
}

function looksAfter(judged: Judged, section: Section): boolean {
  return (
    readsOhms(judged, section) ||
    blocksOfWords(section).some(({ quote }) => careWords.test(quote)) ||
    careWords.test(section.heading) ||
    section.facts.some(({ value }) => careWords.test(value))
  );
}

function readsOhms({ facts }: Judged, { id }: Section): boolean {
  return (facts.steps[id]?.measures ?? []).some(({ value }) =>
    /Ω|ohm|continuity|beep/i.test(`${value.expect} ${value.text}`),
  );
}

const careWords =
  /\b(?:shorts?|short[- ]circuits?|bridges?|bridged|continuity|polarity|inspect\w*|(?:double|triple)[- ]check\w*|check (?:all|every|each|your|the (?:wiring|joints|board|connections|orientation|polarity))|look over|ohms?|resistance|multimeter)\b/iu;
