import type { Place } from '#core/place.ts';
import { parseLicenceExpression } from '#notation/licences.ts';
import { defineCheck } from '../defineCheck.ts';
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
    const named = Object.values(build.settings.licences)
      .filter((text) => text !== null)
      .map(parseLicenceExpression);
    if (named.length === 0 || named.some((read) => 'strange' in read)) return;
    const ids = new Set(named.flatMap((read) => ('licences' in read ? read.licences.map(({ id }) => id) : [])));
    const held = build.licences.flatMap(({ spdx }) => spdx ?? []);
    if (held.length < build.licences.length) return;
    const unnamed = build.licences.filter(({ spdx }) => spdx !== null && ![...ids].some((id) => sameText(id, spdx)));
    const unheld = [...ids].filter((id) => !id.includes('LicenseRef-') && !held.some((spdx) => sameText(id, spdx)));
    if (unnamed.length === 0 || unheld.length === 0) return;
    const setting: Place = build.settings.places.licences ?? { kind: 'file', file: 'twicebuilt.yaml' };
    yield {
      subjects: ['build:licence'],
      mark: unnamed.map(({ spdx }) => spdx).join('+'),
      sides: [...unnamed.map(({ path }): Place => ({ kind: 'file', file: path })), setting],
      message: `${listed(unnamed.map(({ path, spdx }) => `${path} holds ${spdx}`))}; the settings name ${listed(unheld)}.`,
      consequence: 'Nobody can tell which of the two holds.',
      remedy: 'Put the text of the licence that you mean into the file, or name that licence in twicebuilt.yaml.',
    };
  },
  examples: {
    passes: [
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
        expect: [{ file: 'LICENSE-code', words: 'Apache-2.0' }],
      },
    ],
  },
});

/** Whether two identifiers stand for one text: '-only' and '-or-later' are told outside of it. */
function sameText(a: string, b: string): boolean {
  return bare(a) === bare(b);
}

function bare(id: string): string {
  return id.replace(/(?:-only|-or-later|\+)$/, '').toLowerCase();
}
