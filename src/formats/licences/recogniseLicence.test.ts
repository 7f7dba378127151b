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
});
