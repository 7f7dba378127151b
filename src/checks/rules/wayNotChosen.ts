import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const wayNotChosen = defineCheck({
  id: 'way-not-chosen',
  title: 'Where there are several ways, the guide says which to take or what decides.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A builder who has to choose without knowing stops, and reads up on every way.',
  basis: 'common practice: a guide tells one way, and others only with what speaks for them',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    for (const section of everySection(build)) {
      const isListed = section.role === 'parts' || section.role === 'tools';
      const whole = blocksOfWords(section)
        .map(({ quote }) => quote)
        .join('\n');
      for (const { text, place, block, placeOf } of sentencesIn(section)) {
        const match = several.exec(text);
        if (match === null || decides.test(isListed ? block.quote : whole)) continue;
        yield {
          subjects: [section.role === 'step' ? `step:${section.id}` : `file:${section.file}`],
          mark: `${section.id}-ways`,
          sides: [placeOf(match.index, match.index + match[0].length), place],
          basis: 'read',
          message: `The guide says ‘${match[0].trim()}’, and not which one to take.`,
          consequence: 'A builder has to choose without knowing what follows from it.',
          remedy: 'Say which way the rest of the guide goes, and when another one is better.',
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'with what decides, or with what the guide does',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nThere are two ways to fit the lamp. If it is to be changed later, use a socket. Otherwise solder it.\n\n## Mount it\n\nThere are many ways to mount it. I used a magnet.\n',
        },
      },
      {
        title: 'several things that are no ways',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nThere are several holes. There are many ways to get help. There are different screws: take the short ones.\n',
        },
      },
    ],
    fails: [
      {
        title: 'in a step',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nThere are several ways to hold the lamp. Glue, a clip and a screw have all been seen.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'several ways' }],
      },
      {
        title: 'in a list of parts, where another row decides for itself alone',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × lamp\n- 1 × socket. There are various options for it: soldered, screwed, clipped.\n- 1 × cell. I used a flat one.\n\n## Fit it\n\nSolder the lamp.\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'various options' }],
      },
    ],
  },
});

const several =
  /\bthere (?:are|is) (?:several|many|multiple|various|different|a number of|a few|lots of|plenty of|two|three|four|more than one)(?: different| possible| other)? (?:ways?|options?|possibilities|methods?|approaches|alternatives|choices)\b(?! to (?:get (?:help|in touch|support)|contribute|contact|reach|help|support|join|learn|find out|play)\b)/iu;
const decides =
  /\b(?:recommend\p{L}*|choose|pick|depend\p{L}*|if you|if it|unless|prefer\p{L}*|easiest|simplest|best|better|whichever|does not matter|doesn['’]t matter|any of (?:them|these)|all (?:of them )?work|either (?:one )?works|this guide|here we|(?:we|I)(?: have|['’]ve)? (?:used?|chose|went|took|take|go|ended up)|option [a-c1-3]\b|variant [a-c1-3]\b)/iu;
