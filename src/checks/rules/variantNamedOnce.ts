import { slugOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const variantNamedOnce = defineCheck({
  id: 'variant-named-once',
  title: 'A variant has one name throughout.',
  weight: 'slows',
  audience: 'builder',
  why: 'A variant under a second name is a third one to a builder, who leaves its step out.',
  basis: 'common practice; names one slip of the keyboard apart',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'variant-named-once' || stop.step === null) continue;
      yield {
        subjects: [`step:${stop.step}`],
        mark: slugOf(stop.name),
        sides: [...(stop.claim?.places ?? []), ...stop.other.places],
        message: `Only ${stepName(build, stop.step)} is for the variant ‘${stop.name}’; other steps are for ‘${stop.like}’.`,
        consequence: `A builder of ‘${stop.like}’ may leave this step out.`,
        remedy: `Write ‘${stop.like}’ if that is meant.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the same name in other signs, numbered ones, and one that is truly alone',
        files: {
          'guide.md':
            '# Night light\n\n## A\n\n- Variant: USB-C\n\nSolder.\n\n## B\n\n- Variant: USBC\n\nSolder.\n\n## C\n\n- Variant: board 1\n\nSolder.\n\n## D\n\n- Variant: board 2\n\nSolder.\n\n## E\n\n- Variant: board 2\n\nSolder.\n',
        },
      },
      {
        title: 'two variants with a step each',
        files: {
          'guide.md': '# Night light\n\n## A\n\n- Variant: wall\n\nScrew.\n\n## B\n\n- Variant: desk\n\nScrew.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a letter is missing',
        files: {
          'guide.md':
            '# Night light\n\n## A\n\n- Variant: battery\n\nSolder.\n\n## B\n\n- Variant: battery\n\nSolder.\n\n## C\n\n- Variant: batery\n\nSolder.\n',
        },
        expect: [{ file: 'guide.md', line: 17, words: 'battery' }],
      },
      {
        title: 'two letters swapped',
        files: {
          'guide.md':
            '# Night light\n\n## A\n\n- Variant: wlal mount\n\nSolder.\n\n## B\n\n- Variant: wall mount\n\nSolder.\n\n## C\n\n- Variant: wall mount\n\nSolder.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'wall mount' }],
      },
    ],
  },
});
