import { describe, expect, it } from 'vitest';
import { parseLicenceExpression } from './licenceExpression.ts';

const idsIn = (text: string) => {
  const read = parseLicenceExpression(text);
  return 'strange' in read ? `strange: ${read.strange}` : read.licences.map(({ id }) => id);
};

describe('parseLicenceExpression', () => {
  // The examples of Annex D of the SPDX specification.
  it.each([
    ['CDDL-1.0', ['CDDL-1.0']],
    ['CDDL-1.0+', ['CDDL-1.0']],
    ['LicenseRef-23', ['LicenseRef-23']],
    ['LicenseRef-MIT-Style-1', ['LicenseRef-MIT-Style-1']],
    ['DocumentRef-spdx-tool-1.2:LicenseRef-MIT-Style-2', ['DocumentRef-spdx-tool-1.2:LicenseRef-MIT-Style-2']],
    ['LGPL-2.1-only OR MIT', ['LGPL-2.1-only', 'MIT']],
    ['LGPL-2.1-only OR MIT OR BSD-3-Clause', ['LGPL-2.1-only', 'MIT', 'BSD-3-Clause']],
    ['LGPL-2.1-only AND MIT AND BSD-2-Clause', ['LGPL-2.1-only', 'MIT', 'BSD-2-Clause']],
    ['GPL-2.0-or-later WITH Bison-exception-2.2', ['GPL-2.0-or-later']],
    ['LGPL-2.1-only OR BSD-3-Clause AND MIT', ['LGPL-2.1-only', 'BSD-3-Clause', 'MIT']],
    ['MIT AND (LGPL-2.1-or-later OR BSD-3-Clause)', ['MIT', 'LGPL-2.1-or-later', 'BSD-3-Clause']],
    ['Mit or mIt', ['MIT', 'MIT']],
  ])('reads %s', (text, ids) => {
    expect(idsIn(text)).toEqual(ids);
  });

  it.each([
    ['MIT And Apache-2.0', 'strange: And'],
    ['CDDL-1.0 +', 'strange: +'],
    ['MIT OR', 'strange: OR'],
    ['(MIT OR ISC', 'strange: ISC'],
    ['MIT)', 'strange: )'],
    ['AND MIT', 'strange: AND'],
    ['GPL-3.0-only WITH', 'strange: WITH'],
    ['(MIT OR ISC) WITH Bison-exception-2.2', 'strange: WITH'],
    ['MIT Apache-2.0', 'strange: Apache-2.0'],
    ['CERN-OHL-S', 'strange: CERN-OHL-S'],
    ['SHL-2.0', 'strange: SHL-2.0'],
    ['', 'strange: '],
  ])('stops in %s', (text, where) => {
    expect(idsIn(text)).toEqual(where);
  });

  it('knows names that the list has given up', () => {
    expect(parseLicenceExpression('GPL-3.0 OR MIT')).toEqual({
      licences: [
        { id: 'GPL-3.0', isDeprecated: true },
        { id: 'MIT', isDeprecated: false },
      ],
    });
  });
});
