import type { Build } from '#core/build.ts';
import type { LicencesBlock, PageBlock } from './guide.ts';

/** Licences, credits and the revision. A missing licence is said, since silence forbids more than makers think. */
export function composeClosing(build: Build, asOf: string): PageBlock[] {
  const { settings } = build;
  const placesOf = (key: string) => settings.places[key] ?? [];
  const closing: PageBlock[] = [
    { kind: 'licences', id: 'licences', places: [placesOf('licences')].flat(), licences: composeLicences(build) },
  ];
  if (settings.authors.length > 0) {
    closing.push({ kind: 'credits', id: 'credits', places: [placesOf('authors')].flat(), authors: settings.authors });
  }
  closing.push({
    kind: 'revision',
    id: 'revision',
    places: [placesOf('revision')].flat(),
    revision: settings.revision,
    asOf: asOf.slice(0, 10),
  });
  return closing;
}

function composeLicences(build: Build): LicencesBlock['licences'] {
  const declared = (['hardware', 'code', 'text'] as const).flatMap((covers) => {
    const spdx = build.settings.licences[covers];
    return spdx === null ? [] : [{ covers, spdx }];
  });
  if (declared.length > 0) return declared;
  const found = new Set(build.licences.flatMap((file) => file.spdx ?? []));
  return [...found].map((spdx) => ({ covers: 'folder', spdx }));
}
