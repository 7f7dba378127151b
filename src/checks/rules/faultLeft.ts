import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const faultLeft = defineCheck({
  id: 'fault-left',
  title: 'A fault that the maker knows of comes with what to do about it.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Everybody who builds it gets the same fault, and each finds a way round it alone.',
  basis: 'common practice: known problems of a revision, each with a way round',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    for (const section of everySection(build)) {
      for (const sentence of sentencesIn(section)) {
        const match = promise.exec(sentence.text);
        if (match === null || wayRound.test(sentence.text) || wayRound.test(sentence.after)) continue;
        yield {
          subjects: [section.role === 'step' ? `step:${section.id}` : `file:${section.file}`],
          mark: match[0].toLowerCase().replace(/\s+/g, '-'),
          sides: [sentence.place],
          basis: 'read',
          message: `The guide knows of a fault and leaves it: ‘${sentence.text.trim()}’`,
          consequence: 'A builder gets the same fault, and no word on what to do with it.',
          remedy: 'Mend it in this edition, or say what to do until then.',
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'mended, or with a way round',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nThe hole was too small, and I found a better solution: drill it to 4 mm. The next version will fix the wobble. Until then, put paper under it.\n',
        },
      },
      {
        title: 'the builder’s own work',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nWe will fix the lid with two screws. We need to find a better place for the cell: turn it round. You can improve it later.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a promise for the next version',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nSolder D1. The switch hits the lid. This will be fixed in the next revision.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'next revision' }],
      },
      {
        title: 'somebody should find something better',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nThe cell rattles in its tray. I still have to find a better way to hold it.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'better way' }],
      },
    ],
  },
});

const coming = '(?:in|for|with) (?:a|the|my|our|one of the)\\s?(?:next|future|later|coming|new)';
const promise = new RegExp(
  [
    `\\b(?:I|we)(?:['’]ll| will| should| need to| have to| must| still (?:have|need) to| want to| hope to)(?: probably| eventually| still| also)?(?: have to| need to| try to)? find (?:a|some|something) ?(?:better|nicer|cleaner|more \\p{L}+)? ?(?:solution|way|fix|remedy|alternative)s?\\b`,
    `\\b(?:will|should|is going to|is to) (?:hopefully |probably )?be (?:fixed|corrected|solved|resolved|addressed|improved|mended|better) ${coming}\\b`,
    `\\b(?:I|we)(?:['’]ll| will| want to| plan to| hope to| intend to)(?: \\p{L}+)? (?:fix|correct|solve|resolve|address|improve|change) (?:it|this|that|these|them|the \\p{L}+) ${coming}\\b`,
    '\\b(?:next|future) (?:version|revision|edition|board)s? (?:will|should|is going to) (?:fix|correct|solve|mend|address)\\b',
    "\\bI (?:do not|don['’]t) (?:yet )?know (?:yet )?(?:why|how to (?:fix|solve|mend))\\b",
  ].join('|'),
  'iu',
);
const wayRound =
  /\b(?:until then|in the meantime|meanwhile|for now|work-?arounds?|instead|to avoid (?:it|this)|can be (?:fixed|mended|solved))\b|:\s+\p{L}+/iu;
