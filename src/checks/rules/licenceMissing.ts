import type { Build } from '#core/build.ts';
import type { Place } from '#core/place.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed } from '../say.ts';
import { frontOf, proseWords } from '../writtenGuide.ts';

export const licenceMissing = defineCheck({
  id: 'licence-missing',
  title: 'What may be done with hardware, code and text is said.',
  weight: 'slows',
  audience: 'publisher',
  why: 'Without a licence nobody may copy, change or sell what was published, whatever the maker meant.',
  basis:
    'open source hardware definition 1.0 and DIN SPEC 3105-1: a release carries a licence; copyright law is the default',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    const { licences, places } = build.settings;
    const classes = classesOf(build);
    const open = classes.filter((name) => licences[name] === null);
    if (open.length === 0) return;
    const named = classes.length - open.length;
    // A licence file, or a word in the text, stands for everything where the settings do not tell apart.
    if (named === 0 && (build.licences.length > 0 || speaksOfLicence(build))) return;
    const setting = places.licences;
    const side: Place = setting ?? frontOf(build);
    yield {
      subjects: ['build:licence'],
      sides: [side],
      message:
        named === 0
          ? 'Neither the settings nor a file nor the text names a licence.'
          : `The settings name no licence for the ${listed(open.map((name) => words[name]))}.`,
      consequence: 'A builder may look, but may not share a copy, a change or a board.',
      remedy:
        'Name a licence for hardware, code and text under ‘licences’ in twicebuilt.yaml, such as CERN-OHL-P-2.0, MIT and CC-BY-4.0.',
    };
  },
  examples: {
    passes: [
      {
        title: 'a file beside the guide',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          LICENSE: 'SPDX-License-Identifier: CERN-OHL-P-2.0\n',
        },
      },
      {
        title: 'a sentence at the end of the guide',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Rights\n\nText and drawings are under a Creative Commons licence, CC BY 4.0.\n',
        },
      },
      {
        title: 'no code, so no licence for code',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CERN-OHL-P-2.0\n  text: CC-BY-4.0\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
        },
      },
    ],
    fails: [
      {
        title: 'no word of it',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' },
        expect: [{ file: 'guide.md', line: 1, words: 'names a licence' }],
      },
      {
        title: 'code that the settings forgot',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CERN-OHL-P-2.0\n  text: CC-BY-4.0\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
          'main.ino': 'const int LAMP_PIN = 5;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'twicebuilt.yaml', line: 2, words: 'for the code' }],
      },
    ],
  },
});

type Class = keyof Build['settings']['licences'];

const words: Readonly<Record<Class, string>> = { hardware: 'hardware', code: 'code', text: 'text' };

/** What of the three the build holds. */
function classesOf({ parts, connections, roles, sources }: Build): Class[] {
  const hasHardware = parts.length + connections.length > 0 || roles.some(({ role }) => role === 'design');
  return [...(hasHardware ? ['hardware' as const] : []), ...(sources.length > 0 ? ['code' as const] : []), 'text'];
}

function speaksOfLicence(build: Build): boolean {
  return /\b(?:licen\p{L}+|creative commons|public domain|copyleft|all rights reserved|CC[ -](?:BY|0)|lizenz\p{L}*)\b/iu.test(
    proseWords(build),
  );
}
