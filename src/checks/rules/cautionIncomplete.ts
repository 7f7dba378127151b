import { tellsAvoidance, tellsHarm } from '#prose/cautions/messages.ts';
import { defineCheck } from '../defineCheck.ts';
import { numbered } from '../say.ts';
import { cautionsOf, type StatedCaution } from '../statedCautions.ts';

export const cautionIncomplete = defineCheck({
  id: 'caution-incomplete',
  title: 'A caution says what can happen and how to avoid it.',
  weight: 'tidy',
  audience: 'builder',
  words: 'English',
  why: 'Who is told only that something is hot or dangerous does not know what to do about it.',
  basis: 'order of a message in ANSI Z535.6 and ISO 3864-2: hazard, consequence, how to avoid it',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build, facts }) {
    const all = cautionsOf(build, facts);
    const lacking = all.flatMap((caution) => {
      const lack = lackOf(caution);
      return lack === null ? [] : [{ caution, lack }];
    });
    const [first] = lacking;
    if (first === undefined) return;
    const { caution, lack } = first;
    yield {
      subjects: ['build:cautions'],
      mark: 'incomplete',
      sides: lacking.slice(0, 5).map((one) => one.caution.place),
      message: `${lacking.length} of ${numbered(all.length, 'caution')} ${lacking.length === 1 ? 'is' : 'are'} not complete: the one in line ${caution.place.line} does not say ${lack}.`,
      consequence: 'A builder is warned without knowing of what, or what to do about it.',
      remedy: 'Write each in this order: the hazard, what happens, how to avoid it.',
    };
  },
  examples: {
    passes: [
      {
        title: 'hazard, consequence and avoidance',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Caution: The tip of the iron is hot and burns skin. Hold it by its handle.\n- Notice: Static charge destroys D1. Touch a grounded part first.\n\nSolder D1.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
        },
      },
      {
        title: 'plain words in the text are no message to be judged',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n\nMind the hot iron. Solder D1.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
        },
      },
    ],
    fails: [
      {
        title: 'only the hazard',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Warning: High voltage.\n- Caution: The iron burns skin. Hold its handle.\n\nSolder D1.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'what can happen' }],
      },
      {
        title: 'no way to avoid it',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Caution: The iron burns skin.\n\nSolder D1.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'how to avoid it' }],
      },
    ],
  },
});

function lackOf({ message }: StatedCaution): string | null {
  const [harm, avoidance] = [tellsHarm(message), tellsAvoidance(message)];
  if (harm && avoidance) return null;
  return harm ? 'how to avoid it' : avoidance ? 'what can happen' : 'what can happen and how to avoid it';
}
