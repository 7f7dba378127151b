import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { guideWords } from '../guideWords.ts';
import { partKind } from '../partKind.ts';
import { firstRows, fittedRows, rowName, rowWords } from '../partWords.ts';
import { listed, partsFiles } from '../say.ts';

export const replacementUnsaid = defineCheck({
  id: 'replacement-unsaid',
  title: 'The list says what may replace a part that can no longer be bought.',
  weight: 'tidy',
  audience: 'publisher',
  words: 'English',
  why: 'Parts go out of production; a row that tells what must match outlives its part number.',
  basis: 'common practice: exact, equivalent, or anything that fits',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run({ build }) {
    const rows = fittedRows(build);
    if (rows.length < 5) return;
    const silent = rows.filter((part) => !speaksOfReplacement(rowWords(part), part));
    const critical = silent.filter((part) => part.mpn === null && isCritical(part));
    if (silent.length === rows.length && !replacing.test(guideWords(build))) yield allSilent(build);
    else if (critical.length > 0) yield criticalSilent(critical);
  },
  examples: {
    passes: [
      {
        title: 'a column that says so, with numbers for what is critical',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,MPN,Substitution\nU1,1,Timer chip,NE-555P,\nU2,1,Sensor board BME280,,equivalent ok: same pins\nR1,1,Resistor,,anything\nR2,1,Resistor,,anything\nR3,1,Resistor,,anything\n',
        },
      },
      {
        title: 'the guide says it in a sentence; a short list need not',
        files: {
          'guide.md': '# Night light\n\nAny equivalent part will do, except for U1.\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,MPN\nU1,1,Timer chip,NE-555P\nR1,1,Resistor,\nR2,1,Resistor,\nR3,1,Resistor,\nR4,1,Resistor,\n',
        },
      },
    ],
    fails: [
      {
        title: 'no row says it',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,Timer chip NE555\nR1,1,Resistor\nR2,1,Resistor\nR3,1,Resistor\nR4,1,Resistor\n',
        },
        expect: [{ file: 'parts.csv', words: 'No row' }],
      },
      {
        title: 'the resistors say it, the sensor does not',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Substitution\nU2,1,Sensor board BME280,\nR1,1,Resistor,anything\nR2,1,Resistor,anything\nR3,1,Resistor,anything\nR4,1,Resistor,anything\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'U2' }],
      },
    ],
  },
});

const replacing =
  /\b(?:substitut\w*|equivalent\w*|alternative\w*|replace(?:d|ment)?s? (?:by|with)|or similar|similar|any(?:thing)?|exact(?:ly)?|must match|compatible|will do|other makes?)\b/iu;

function speaksOfReplacement(words: string, part: Part): boolean {
  return part.substitution !== null || replacing.test(words);
}

const criticalKinds = new Set(['chip', 'module', 'transistor', 'relay']);

function isCritical(part: Part): boolean {
  const kind = partKind(part);
  return kind !== null && criticalKinds.has(kind);
}

function allSilent(build: Build): FindingDraft {
  return {
    subjects: ['build:parts'],
    mark: 'all',
    sides: partsFiles(build),
    message: 'No row of the list says whether another part will do.',
    consequence: 'A builder who cannot get a part does not know what must match.',
    remedy: 'Add a column Substitution with ‘exact’, ‘equivalent ok: …’ or ‘anything’, first for chips and modules.',
  };
}

function criticalSilent(parts: readonly Part[]): FindingDraft {
  return {
    subjects: ['build:parts'],
    mark: 'critical',
    sides: firstRows(parts),
    message: `${listed(parts.map(rowName))} ${parts.length === 1 ? 'has' : 'have'} neither a maker's part number nor a word on what may replace ${parts.length === 1 ? 'it' : 'them'}.`,
    consequence: 'A builder who cannot get the part does not know what must match.',
    remedy: 'Add the part number, an alternative, or what must match.',
  };
}
