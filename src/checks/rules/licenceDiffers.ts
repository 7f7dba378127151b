import type { Build } from '#core/build.ts';
import type { Path, Place } from '#core/place.ts';
import { parseLicenceExpression } from '#notation/licences.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { listed } from '../say.ts';

export const licenceDiffers = defineCheck({
  id: 'licence-differs',
  title: 'The licence files hold the licences that the settings name.',
  weight: 'slows',
  audience: 'publisher',
  why: 'Two licences for one thing leave nobody sure of either.',
  basis: 'SPDX licence list: files recognised by their titles and telling phrases',
  needs: { subject: ['files'], witnesses: [] },
  *run({ build }) {
    const named = namedLicences(build);
    if (named === null || build.licences.some(({ spdx }) => spdx === null)) return;
    const apart = named.filter(({ name, ids }) => {
      const files = build.licences.filter(({ path }) => classOfFile(path) === name);
      return files.length > 0 && !files.some(({ spdx }) => ids.some((id) => sameText(id, spdx ?? '')));
    });
    for (const { name, ids, place } of apart) {
      const files = build.licences.filter(({ path }) => classOfFile(path) === name);
      yield differs(files, ids, [place], `the settings put the ${name} under`);
    }
    if (apart.length > 0) return;
    const held = build.licences.flatMap(({ spdx }) => spdx ?? []);
    const isNamed = (spdx: string) => named.some(({ ids }) => ids.some((id) => sameText(id, spdx)));
    const unnamed = build.licences.filter(({ spdx }) => spdx !== null && !isNamed(spdx));
    const isUnheld = (id: string) => !id.includes('LicenseRef-') && !held.some((spdx) => sameText(id, spdx));
    const unheld = [...new Set(named.flatMap(({ ids }) => ids.filter(isUnheld)))];
    if (unnamed.length === 0 || unheld.length === 0) return;
    const places = named.filter(({ ids }) => ids.some(isUnheld)).map(({ place }) => place);
    yield differs(unnamed, unheld, places, 'the settings name');
  },
  examples: {
    passes: [
      {
        title: 'one licence for all, and files of libraries beside it',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences: CC-BY-SA-4.0\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          'LICENSE-hardware-and-text': 'SPDX-License-Identifier: CC-BY-SA-4.0\n',
          'LICENSE-library': 'SPDX-License-Identifier: MIT\n',
        },
      },
      {
        title: 'the same licences; later versions share a text',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CERN-OHL-P-2.0\n  code: GPL-3.0-or-later\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          'LICENSE-hardware': 'SPDX-License-Identifier: CERN-OHL-P-2.0\n',
          'LICENSE-code': 'SPDX-License-Identifier: GPL-3.0-only\n',
        },
      },
      {
        title: 'a file whose licence is not recognised',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CERN-OHL-P-2.0\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          LICENSE: 'You may do with it as you please.\n',
        },
      },
    ],
    fails: [
      {
        title: 'another licence in the file',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CERN-OHL-P-2.0\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          LICENSE: 'SPDX-License-Identifier: CERN-OHL-S-2.0\n',
        },
        expect: [{ file: 'LICENSE', words: 'CERN-OHL-S-2.0' }],
      },
      {
        title: 'one of two files',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CERN-OHL-P-2.0\n  code: MIT\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          'LICENSE-hardware': 'SPDX-License-Identifier: CERN-OHL-P-2.0\n',
          'LICENSE-code': 'SPDX-License-Identifier: Apache-2.0\n',
        },
        expect: [
          { file: 'LICENSE-code', words: 'Apache-2.0' },
          { file: 'twicebuilt.yaml', line: 4, words: 'MIT' },
        ],
      },
      {
        title: 'text under the licence of the code, although a file says what holds for texts',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  code: MIT\n  text: MIT\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          'licences/text.txt': 'SPDX-License-Identifier: CC-BY-4.0\n',
          'licences/code.txt': 'SPDX-License-Identifier: MIT\n',
        },
        expect: [{ file: 'twicebuilt.yaml', line: 4, words: 'put the text under MIT' }],
      },
    ],
  },
});

interface NamedLicence {
  readonly name: Class;
  readonly ids: readonly string[];
  readonly place: Place;
}

type Class = keyof Build['settings']['licences'];

/** What the settings name; null where they name nothing, or something that cannot be read. */
function namedLicences({ settings: { licences, places } }: Build): NamedLicence[] | null {
  const named: NamedLicence[] = [];
  for (const name of ['hardware', 'code', 'text'] as const) {
    const text = licences[name];
    if (text === null) continue;
    const read = parseLicenceExpression(text);
    if ('strange' in read) return null;
    const place = places[`licences.${name}`] ?? places.licences ?? { kind: 'file', file: 'twicebuilt.yaml' };
    named.push({ name, ids: read.licences.map(({ id }) => id), place });
  }
  return named.length === 0 ? null : named;
}

const classWords: Readonly<Record<Class, RegExp>> = {
  hardware: /\bhardware\b/iu,
  code: /\b(?:code|software|firmware)\b/iu,
  text: /\b(?:text|docs?|documentation)\b/iu,
};

/** What a licence file is for, by its own name: `LICENSE-code.txt`, `licences/text.md`; null where it does not say. */
function classOfFile(path: Path): Class | null {
  const words = (path.split('/').at(-1) ?? '').replace(/\.\w+$/u, '').replace(/_/gu, ' ');
  const [only, another] = (['hardware', 'code', 'text'] as const).filter((name) => classWords[name].test(words));
  return another === undefined ? (only ?? null) : null;
}

function differs(
  files: Build['licences'],
  ids: readonly string[],
  settings: readonly Place[],
  said: string,
): FindingDraft {
  const unique = [...new Map(settings.map((place) => [JSON.stringify(place), place])).values()];
  return {
    subjects: ['build:licence'],
    mark: files.map(({ spdx }) => spdx).join('+'),
    sides: [...files.map(({ path }): Place => ({ kind: 'file', file: path })), ...unique],
    message: `${listed(files.map(({ path, spdx }) => `${path} holds ${spdx}`))}; ${said} ${listed(ids)}.`,
    consequence: 'Nobody can tell which of the two holds.',
    remedy: 'Put the text of the licence that you mean into the file, or name that licence in the settings.',
  };
}

/** Whether two identifiers stand for one text: '-only' and '-or-later' are told outside of it. */
function sameText(a: string, b: string): boolean {
  return bare(a) === bare(b);
}

function bare(id: string): string {
  return id.replace(/(?:-only|-or-later|\+)$/, '').toLowerCase();
}
