import type { Build } from '#core/build.ts';
import type { Finding } from '#core/finding.ts';
import type { Path, Place } from '#core/place.ts';

const weights = ['halts', 'slows', 'tidy'] as const;

/** Gravest first; within a weight as a reader comes to them: the guide, the lists, the wiring, the code, the rest. */
export function inReadingOrder(findings: readonly Finding[], build: Build): Finding[] {
  const files = new Map<Path, number>();
  const add = (file: Path) => {
    if (!files.has(file)) files.set(file, files.size);
  };
  for (const { file } of build.instructions.sections) add(file);
  for (const { file } of build.partsLists) add(file);
  for (const { place } of build.tools) add(place.file);
  for (const { place } of build.connections) add(place.file);
  for (const { file } of build.sources) add(file);
  for (const { path } of build.files) add(path);

  const keyOf = (finding: Finding) => {
    const first = finding.sides
      .map(({ place }) => ({ file: files.get(place.file) ?? files.size, at: offsetOf(place) }))
      .reduce((a, b) => (b.file < a.file || (b.file === a.file && b.at < a.at) ? b : a), {
        file: files.size + 1,
        at: 0,
      });
    return { weight: weights.indexOf(finding.weight), ...first };
  };
  return findings
    .map((finding) => ({ finding, key: keyOf(finding) }))
    .sort((a, b) => a.key.weight - b.key.weight || a.key.file - b.key.file || a.key.at - b.key.at)
    .map(({ finding }) => finding);
}

function offsetOf(place: Place): number {
  return place.kind === 'text' ? place.span[0] : 0;
}
