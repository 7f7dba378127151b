import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const sideNotAnnounced = defineCheck({
  id: 'side-not-announced',
  title: 'The guide says when to turn the work over.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'On the other side everything is mirrored; a builder who did not turn the board works on the wrong holes.',
  basis: 'common practice',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'side-changes-untold' || stop.step === null) continue;
      const since = build.instructions.sections.find(({ id }) => id === stop.since);
      yield {
        subjects: [`step:${stop.step}`],
        mark: 'side',
        basis: 'read',
        sides: [
          ...(stop.claim?.places ?? []),
          ...(since?.facts.filter(({ label }) => label === 'side') ?? []).map(({ place }) => place),
        ],
        message: `The step ${stepName(build, stop.step)} works on the ${stop.to} after the ${stop.from}, and the guide nowhere says to turn the work over.`,
        consequence:
          'A builder may work on the wrong side, or turn it the wrong way so that left and right change places.',
        remedy: 'Say in the step to turn it over, about which edge, and where the first hole is then.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'turned in words; another thing has its own sides',
        files: {
          'guide.md':
            '# Night light\n\n## A\n\n- Side: component side\n\nPush it in. Turn the board over and solder.\n\n## B\n\n- Side: underside\n\nSolder.\n\n## C\n\n- Side: front of the ring\n\nLook.\n',
        },
      },
      {
        title: 'the step names the side in its own words, or closes a lid there',
        files: {
          'guide.md':
            '# Night light\n\n## A\n\n- Side: top\n\nPush it in.\n\n## B\n\n- Side: bottom\n\nSolder from below.\n\n## C\n\n- Side: top\n\nClose it.\n',
        },
      },
    ],
    fails: [
      {
        title: 'top, then underside',
        files: {
          'guide.md':
            '# Night light\n\n## A\n\n- Side: component side\n\nPush it in.\n\n## B\n\n- Side: underside\n\nSolder.\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'underside' }],
      },
      {
        title: 'and up again',
        files: {
          'guide.md':
            '# Night light\n\n## A\n\n- Side: solder side\n\nJoin it.\n\n## B\n\nLook.\n\n## C\n\n- Side: top\n\nSolder it on.\n',
        },
        expect: [{ file: 'guide.md', line: 15, words: 'top' }],
      },
    ],
  },
});
