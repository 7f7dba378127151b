import type { Place } from '#core/place.ts';
import type { StepId } from '#core/step.ts';
import { defineCheck } from '../defineCheck.ts';
import { rowName } from '../partWords.ts';
import { listed, stepName } from '../say.ts';

export const unfittedPartUsed = defineCheck({
  id: 'unfitted-part-used',
  title: 'No step fits a part that the list marks as not fitted.',
  weight: 'halts',
  audience: 'builder',
  why: 'A place that stays empty in one file and is filled in another leaves a builder without the part, or with one too many.',
  basis: 'common practice: marks such as DNP in the list against what the steps take',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run({ build, facts }) {
    for (const part of build.parts) {
      if (part.fitted) continue;
      // The other row of a part that is listed twice may be the one that is fitted.
      if (build.parts.some((other) => other.fitted && other.refs.some((ref) => part.refs.includes(ref)))) continue;
      const places: Place[] = [];
      const steps = new Set<StepId>();
      for (const [step, { uses, variant, optional }] of Object.entries(facts.steps)) {
        if (variant !== null || optional !== null) continue;
        for (const { value, basis, places: here } of uses) {
          if (value.part !== part.id || basis !== 'declared') continue;
          places.push(...here);
          steps.add(step);
        }
      }
      if (steps.size === 0) continue;
      yield {
        subjects: [`part:${part.id}`],
        sides: [...places, part.cells.fitted ?? part.cells.quantity ?? part.place],
        message: `${listed([...steps].map((step) => stepName(build, step)))} ${steps.size === 1 ? 'takes' : 'take'} ${rowName(part)}, which the list marks as not fitted.`,
        consequence: 'A builder has not bought the part, or fits one that must stay off.',
        remedy:
          'Take the mark off the row, or take the part out of the step; where both occur, name the variant in the step.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the place stays empty, or is filled in one variant only',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistors\n\n- Parts: R1\n\nLeave R2 empty.\n\n## Make it brighter\n\n- Parts: R3\n- Optional: brighter light\n\nSolder R3.\n',
          'parts.csv':
            'Reference,Quantity,Description,DNP\nR1,1,Resistor 150 Ω,\nR2,1,Resistor 10 kΩ,DNP\nR3,1,Resistor 100 Ω,DNP\n',
        },
      },
      {
        title: 'the part stands in another row too, fitted',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\n- Parts: R1\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description,DNP\nR1,1,Resistor 150 Ω,\nR1,1,Resistor 180 Ω,DNP\n',
        },
      },
    ],
    fails: [
      {
        title: 'the step fits what the list leaves out',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\n- Parts: R1, R2\n\nSolder both.\n',
          'parts.csv': 'Reference,Quantity,Description,DNP\nR1,1,Resistor 150 Ω,\nR2,1,Resistor 10 kΩ,DNP\n',
        },
        expect: [{ file: 'parts.csv', line: 3, words: 'R2' }],
      },
      {
        title: 'a quantity that says so',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\n- Parts: R1, R2\n\nSolder both.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nR2,not fitted,Resistor 10 kΩ\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'R2' }],
      },
    ],
  },
});
