import type { Build } from '#core/build.ts';
import type { StepId } from '#core/step.ts';
import { cautionFor } from '#prose/cautions/library.ts';
import { phrasesOf } from '#prose/cautions/phrases.ts';
import { defineCheck } from '../defineCheck.ts';
import { hazardsThatBite } from '../hazardsThatBite.ts';
import { stepName } from '../say.ts';

export const protectionNotNamed = defineCheck({
  id: 'protection-not-named',
  title: 'What to wear is named at the step or ahead of it.',
  weight: 'slows',
  audience: 'builder',
  firm: true,
  words: 'English',
  why: 'Glasses that are named only afterwards, or in a list of tools alone, stay in the drawer.',
  basis: 'IEC/IEEE 82079-1: protective equipment is told with the instruction; EN 166 and ANSI Z87.1 for eyes',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build, facts }) {
    for (const found of hazardsThatBite(build, facts.hazards)) {
      const { protect, name } = cautionFor(found.hazard);
      // Where nothing warns at all, that is the finding.
      if (protect === null || found.step === null || found.cover === 'uncovered' || found.cover === 'late') continue;
      if (phrasesOf(protect.words).find(wordsUpTo(build, found.step)) !== null) continue;
      yield {
        subjects: [`step:${found.step}`],
        mark: found.hazard,
        sides: [found.places[0]],
        basis: found.basis,
        message: `${stepName(build, found.step)} brings ${name}; neither it nor anything before it says what to wear.`,
        consequence: 'A builder knows of the hazard and meets it with bare eyes or hands.',
        remedy: `Add to the caution: ${protect.wear}`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'glasses in the caution',
        files: {
          'guide.md':
            '# Box\n\n## Make the window\n\n- Parts: MP1\n- Caution: Drilling throws chips into eyes. Wear safety glasses.\n\nDrill a hole in the lid.\n',
          'parts.csv': 'Reference,Quantity,Description\nMP1,1,Lid\n',
        },
      },
      {
        title: 'glasses among the tools of the step',
        files: {
          'guide.md':
            '# Box\n\n## Make the window\n\n- Parts: MP1\n- Tools: drill, safety glasses\n- Caution: Drilling throws chips into eyes. Clamp the lid.\n\nDrill a hole in the lid.\n',
          'parts.csv': 'Reference,Quantity,Description\nMP1,1,Lid\n',
        },
      },
    ],
    fails: [
      {
        title: 'a caution without glasses',
        files: {
          'guide.md':
            '# Box\n\n## Make the window\n\n- Parts: MP1\n- Caution: Drilling throws chips into your eyes. Clamp the lid.\n\nDrill a hole in the lid.\n',
          'parts.csv': 'Reference,Quantity,Description\nMP1,1,Lid\n',
        },
        expect: [{ file: 'guide.md', line: 8, words: 'what to wear' }],
      },
      {
        title: 'goggles that only the list of tools has',
        files: {
          'guide.md':
            '# Box\n\n## Make the board\n\n- Parts: PB1\n- Warning: The etchant is corrosive and burns skin. Work over a tray.\n\nEtch PB1 for ten minutes.\n',
          'parts.csv': 'Reference,Quantity,Description\nPB1,1,Copper-clad board\n',
          'tools.csv': 'tool,needed\ngoggles,yes\n',
        },
        expect: [{ file: 'guide.md', line: 8, words: 'an etching bath' }],
      },
    ],
  },
});

/** Everything that a builder has read by the end of a step's text. */
function wordsUpTo({ instructions: { sections } }: Build, step: StepId): string {
  const at = sections.findIndex(({ id }) => id === step);
  return sections
    .slice(0, at + 1)
    .filter(({ role }) => role !== 'tools' && role !== 'parts')
    .flatMap(({ facts, blocks }) => [...facts.map(({ value }) => value), ...blocks.map(({ place }) => place.quote)])
    .join('\n');
}
