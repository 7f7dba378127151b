import deprecated from 'spdx-license-ids/deprecated.json';
import identifiers from 'spdx-license-ids/index.json';
import { parseLicenceExpression } from '#notation/licences.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed } from '../say.ts';

export const licenceNotKnown = defineCheck({
  id: 'licence-not-known',
  title: 'Licences are named as the published list names them.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A name that no list holds leaves open which version, and which of several texts, is meant.',
  basis: 'SPDX licence list and licence expressions (SPDX specification, Annex D)',
  needs: { subject: ['files'], witnesses: [] },
  *run({ build }) {
    const { licences, places } = build.settings;
    const written = new Map(Object.entries(licences).flatMap(([name, text]) => (text === null ? [] : [[text, name]])));
    for (const [text, name] of written) {
      const read = parseLicenceExpression(text);
      const side = places[`licences.${name}`] ?? places.licences ?? { kind: 'file' as const, file: 'twicebuilt.yaml' };
      if ('strange' in read) {
        const near =
          [nearest(read.strange), nearest(text.replace(/\b(?:the|licen[cs]e|version)\b/gi, ''))].find(
            (ids) => ids.length > 0,
          ) ?? [];
        yield {
          subjects: ['setting:licences'],
          mark: text,
          sides: [side],
          message: `‘${text}’ is no SPDX licence expression${read.strange === text || read.strange === '' ? '' : `; it stops being one at ‘${read.strange}’`}.`,
          consequence: 'Readers and tools that look the licence up find none.',
          remedy:
            near.length === 0
              ? 'Write an identifier of spdx.org/licenses, or LicenseRef- with a name of your own.'
              : `Write ${listed(near).replace(/ and (?=[^ ]*$)/, ' or ')}.`,
        };
        continue;
      }
      for (const { id } of read.licences.filter(({ isDeprecated }) => isDeprecated)) {
        const near = nearest(id);
        yield {
          subjects: ['setting:licences'],
          mark: id,
          sides: [side],
          message: `The licence list no longer holds ‘${id}’.`,
          consequence: 'It stays open whether later versions of the licence are allowed.',
          remedy: near.length === 0 ? 'Take its newer name from spdx.org/licenses.' : `Write ${near.join(' or ')}.`,
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'identifiers, a choice of two, and a reference of one’s own',
        files: {
          'twicebuilt.yaml':
            'format: 1\nlicences:\n  hardware: CERN-OHL-P-2.0\n  code: MIT OR Apache-2.0\n  text: LicenseRef-School\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
        },
      },
      {
        title: 'nothing said',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' },
      },
    ],
    fails: [
      {
        title: 'an identifier without its version',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CERN-OHL-S\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
        },
        expect: [{ file: 'twicebuilt.yaml', line: 3, words: '‘CERN-OHL-S’ is no SPDX' }],
      },
      {
        title: 'a name that the list has given up, and words',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  code: GPL-3.0\n  text: CC-BY-4.0 And MIT\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
        },
        expect: [
          { file: 'twicebuilt.yaml', line: 3, words: 'no longer holds ‘GPL-3.0’' },
          { file: 'twicebuilt.yaml', line: 4, words: 'at ‘And’' },
        ],
      },
    ],
  },
});

const withdrawn = new Set(deprecated);

/** Identifiers that begin as the word does, letters and digits alone compared; at most four. */
function nearest(word: string): string[] {
  const wanted = bare(word).replace(/\d+$/, (digits) => (digits.length === 1 ? `${digits}0` : digits));
  if (wanted.length < 2) return [];
  const same = identifiers.find((id) => bare(id) === wanted);
  if (same !== undefined) return [same];
  return identifiers.filter((id) => !withdrawn.has(id) && bare(id).startsWith(wanted)).slice(0, 4);
}

function bare(word: string): string {
  return word
    .toLowerCase()
    .replace(/v(?=\d)/g, '')
    .replace(/[^a-z0-9]/g, '');
}
