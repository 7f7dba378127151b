import identifiers from 'spdx-license-ids/index.json';
import table from './phrases.json';

const known = new Map(identifiers.map((id) => [id.toLowerCase(), id]));

/**
 * The SPDX identifier of a licence text: from its `SPDX-License-Identifier` line, else from phrases that only
 * that licence has, else from an identifier standing in a short text. Null when none is certain.
 */
export function recogniseLicence(text: string): string | null {
  const tagged = /SPDX-License-Identifier:\s*([A-Za-z0-9.+-]+)/.exec(text)?.[1];
  if (tagged !== undefined) return known.get(tagged.toLowerCase()) ?? null;
  const words = text
    .replace(/[\u2010-\u2015]/g, '-')
    .replace(/\s+/g, ' ')
    .toLowerCase();
  // A licence may name others further down (secondary licences, bundled code): the first one named governs.
  const [match] = table.phrases
    .filter((entry) => entry.words.every((phrase) => words.includes(phrase)))
    .map((entry) => ({ spdx: entry.spdx, at: words.indexOf(entry.words[0] ?? '') }))
    .sort((a, b) => a.at - b.at);
  if (match !== undefined) return match.spdx;
  return text.length < 4000 ? identifierIn(text) : null;
}

function identifierIn(text: string): string | null {
  const found = new Set(
    [...text.matchAll(/[A-Za-z0-9][A-Za-z0-9.+]*(?:-[A-Za-z0-9.+]+)+/g)]
      .map(([word]) => known.get(word.replace(/\.$/, '').toLowerCase()))
      .filter((id) => id !== undefined),
  );
  return found.size === 1 ? ([...found][0] ?? null) : null;
}
