import type { Build } from '#core/build.ts';
import type { SourceText } from '#core/sourceText.ts';

/** Texts in which people speak to each other: guide, log and pages beside them; no code, manifest, table or licence. */
export function proseOf(build: Build): SourceText[] {
  const silent = new Set([
    ...build.sources.map(({ file }) => file),
    ...build.dependencies.map(({ place }) => place.file),
    ...build.targets.map(({ file }) => file),
    ...build.licences.map(({ path }) => path),
  ]);
  return [...build.texts.values()].filter(
    ({ file }) => !silent.has(file) && /\.(?:md|markdown|mdx|txt|text|rst)$/i.test(file),
  );
}
