import type { Section } from '#core/step.ts';
import { actionsOfStep } from '#rehearsal/actionsOfStep.ts';
import { defineCheck } from '../defineCheck.ts';
import { linksOf } from '../linksOf.ts';
import { stepName } from '../say.ts';

export const toldBeforeExplained = defineCheck({
  id: 'told-before-explained',
  title: 'Loading code is explained before a step asks for it, or the step says where.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Guides are followed from top to bottom; what comes later is not known yet.',
  basis: 'common practice: means come before their use',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build, facts }) {
    const { sections } = build.instructions;
    const explains = sections.findIndex((other) => isExplaining(other));
    for (const [index, section] of sections.entries()) {
      if (section.role !== 'step' || about.test(section.heading) || (facts.steps[section.id]?.loads.length ?? 0) > 0)
        continue;
      const load = actionsOfStep(facts, section.id).find(({ kind, told }) => kind === 'load-code' && told === 'do');
      const later = sections[explains];
      if (load === undefined || later === undefined || explains <= index || saysHow(section, later)) continue;
      yield {
        subjects: [`step:${section.id}`],
        mark: 'load',
        sides: [load.place, later.place],
        basis: 'read',
        message: `The step ${stepName(build, section.id)} has code loaded (‘${load.place.quote}’); how that is done stands later, under ‘${later.heading}’, and the step does not say so.`,
        consequence: 'A builder stops here and looks for the means, or skips the work.',
        remedy: `Put ‘${later.heading}’ before this step, or link to it from here.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'explained before, and later with a link',
        files: {
          'guide.md':
            '# Lamp\n\n## Load the firmware\n\n1. Plug it in.\n2. Flash the firmware with `make flash`.\n\n## Test the lamp\n\nSolder D1. Flash the firmware again if it stays dark.\n\n## Second lamp\n\nSolder D2 and flash the firmware, as under [Updates](#firmware-updates).\n\n## Firmware updates\n\n1. Plug it in.\n2. Flash it with `make flash`.\n',
        },
      },
      {
        title: 'told on the spot',
        files: {
          'guide.md':
            '# Lamp\n\n## Test it\n\nSolder D1. Flash the firmware with `make flash`.\n\n## Firmware\n\n1. Plug it in.\n2. Flash the firmware.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a test in the middle that needs what comes at the end',
        files: {
          'guide.md':
            '# Lamp\n\n## Steps\n\n### Fit it\n\nSolder D1.\n\n### First test\n\nSolder the cable on, flash the firmware and check if it glows.\n\n### Close it\n\nPress the lid on.\n\n## Firmware and programming\n\n1. Plug it in.\n2. Flash the firmware with `make flash`.\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: '‘Firmware and programming’' }],
      },
      {
        title: 'a sketch',
        files: {
          'guide.md':
            '# Lamp\n\n## Solder it\n\nSolder D1. Upload the sketch and look.\n\n## Uploading the code\n\n- Plug it in.\n- Choose the port and upload the sketch.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '‘Uploading the code’' }],
      },
    ],
  },
});

const about =
  /\b(?:firmware|software|program(?:ming|me)?|flash(?:ing)?|upload(?:ing)?|sketch|(?:load|install|write|burn)(?:ing)? (?:the )?(?:code|firmware|software|sketch))\b/iu;

function isExplaining({ heading, blocks, role }: Section): boolean {
  return about.test(heading) && blocks.length > 0 && (role === 'step' || role === 'prose');
}

/** A command, a link, or a word that points there. */
function saysHow(section: Section, later: Section): boolean {
  const words = section.blocks.map(({ place }) => place.quote).join('\n');
  return (
    /`[^`]+`|\b(?:below|later|see|as under|as in|described|further down|last section|end of)\b/iu.test(words) ||
    linksOf(section).length > 0 ||
    words.toLowerCase().includes(later.heading.toLowerCase())
  );
}
