import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { recogniseLicence } from './recogniseLicence.ts';

describe('recogniseLicence', () => {
  // Licence texts as their packages ship them: not written by us.
  it.each([
    ['typescript/LICENSE.txt', 'Apache-2.0'],
    ['vitest/LICENSE.md', 'MIT'],
    ['yaml/LICENSE', 'ISC'],
    ['exifreader/LICENSE', 'MPL-2.0'],
  ])('knows the text in %s as %s', (file, spdx) => {
    expect(recogniseLicence(readFileSync(`node_modules/${file}`, 'utf8'))).toBe(spdx);
  });

  it('believes an SPDX line over the words around it', () => {
    expect(recogniseLicence('SPDX-License-Identifier: CERN-OHL-P-2.0\nThis replaces the MIT text.')).toBe(
      'CERN-OHL-P-2.0',
    );
  });

  it('does not decide between two identifiers', () => {
    expect(recogniseLicence('Boards CERN-OHL-S-2.0, words CC-BY-4.0.')).toBeNull();
  });

  it('does not take an invented identifier for a licence', () => {
    expect(recogniseLicence('SPDX-License-Identifier: CERN-OHL-S')).toBeNull();
  });

  // SPDX licence list 3.x: identifiers of licences for hardware, content and code, and names that look like ones.
  it.each([
    'CERN-OHL-P-2.0',
    'CERN-OHL-W-2.0',
    'CERN-OHL-S-2.0',
    'CERN-OHL-1.2',
    'TAPR-OHL-1.0',
    'SHL-0.51',
    'CC0-1.0',
    'CC-BY-SA-4.0',
    'GFDL-1.3-or-later',
    'OFL-1.1',
    'MIT',
    'BSD-3-Clause',
    'GPL-3.0-or-later',
    'Unlicense',
  ])('knows the identifier %s', (spdx) => {
    expect(recogniseLicence(`SPDX-License-Identifier: ${spdx}\n`)).toBe(spdx);
  });

  it.each(['CERN-OHL-S', 'SHL-2.0', 'SHL-2.1', 'CC-BY'])('knows no identifier %s', (name) => {
    expect(recogniseLicence(`SPDX-License-Identifier: ${name}\n`)).toBeNull();
  });
});
