import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { fittedRows, rowName, rowWords } from '../partWords.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const partUnavailable = defineCheck({
  id: 'part-unavailable',
  title: 'Of a part that can no longer be had the guide says what to take instead.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A maker notices that a part is gone when the next builder asks, and notes that, without the answer.',
  basis: 'common practice',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const inLists = build.partsLists.map(({ file }) => file);
    for (const part of fittedRows(build)) {
      if (part.substitution !== null || !isGone(rowWords(part)) || !/\.(?:csv|tsv)$/iu.test(part.place.file)) continue;
      yield {
        ...common(),
        subjects: [`part:${part.id}`],
        sides: [part.place],
        message: `The list says that ${rowName(part)} cannot be had, and not what may replace it.`,
      };
    }
    for (const section of everySection(build)) {
      for (const { text, after, place } of sentencesIn(section)) {
        if (inLists.includes(place.file) && /\.(?:csv|tsv)$/iu.test(place.file)) continue;
        const match = gone.exec(text);
        if (match === null || notYet.test(text) || remedies.test(text) || remedies.test(after)) continue;
        yield {
          ...common(),
          subjects: [`file:${section.file}`],
          mark: `${section.id}-${match[0].toLowerCase().replace(/\s+/g, '-')}`,
          sides: [place],
          message: `The guide says that something is ‘${match[0]}’, and not beside it what to take instead.`,
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'with what replaces it',
        files: {
          'guide.md':
            '# Lamp\n\nThe old driver is discontinued. Its successor LD-2 fits the same pads. The round lens is sold out; use the flat one instead.\n\n## Fit it\n\nSolder D1.\n',
          'parts.csv':
            'Reference,Quantity,Description,Note,Substitution\nU1,1,Driver,discontinued,LD-2\nD1,1,White LED,,\nR1,1,Resistor,,\n',
        },
      },
      {
        title: 'what would be to do, and what is free to take',
        files: {
          'guide.md':
            '# Lamp\n\nIf the lens is out of stock, any lens of 20 mm will do. The case is no longer needed.\n\n## Fit it\n\nSolder D1.\n',
        },
      },
    ],
    fails: [
      {
        title: 'in a sentence',
        files: {
          'guide.md':
            '# Lamp\n\nI bought the lens from a small shop, where it is sold out by now. The rest is easy to get.\n\n## Fit it\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'sold out' }],
      },
      {
        title: 'in a row',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nSolder D1.\n',
          'parts.csv':
            'Reference,Quantity,Description,Note\nU1,1,Driver LD-1,no longer made\nD1,1,White LED,\nR1,1,Resistor,\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'U1' }],
      },
    ],
  },
});

const gone =
  /\b(?:sold[- ]out|out of stock|discontinued|no longer (?:made|available|sold|produced|manufactured|in production|in stock)|not (?:made|available|sold|produced) any ?more|end of life|unobtainable)\b/iu;
const notYet = /\b(?:if|when|should|in case|unless|may|might|could|before|until)\b/iu;
const remedies =
  /\b(?:instead|replaced (?:by|with)|replacements?|alternatives?|substitut\p{L}+|equivalents?|successor|fits? (?:as well|too|the same)|will do|works? (?:too|as well)|also works?|compatible|(?:use|take|buy|get|order) (?:a|an|the|any)\b)/iu;

function isGone(words: string): boolean {
  return gone.test(words) && !remedies.test(words) && !notYet.test(words);
}

function common(): Pick<FindingDraft, 'basis' | 'consequence' | 'remedy'> {
  return {
    basis: 'read',
    consequence: 'A builder looks for it in vain, and does not know what must match.',
    remedy: 'Name what fits in its place, or what to look for in another: size, pins, ratings.',
  };
}
