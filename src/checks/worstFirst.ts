import type { Build } from '#core/build.ts';
import type { Audience, Finding } from '#core/finding.ts';
import type { Path, Place } from '#core/place.ts';

const weights = ['halts', 'slows', 'tidy'] as const;

/** What ranks findings beside their weight. */
export interface Ranking {
  /** Whose findings decide: those of others come after them. */
  readonly audience: Audience;
  /** Checks of which a finding can cost a part, or hurt somebody. */
  readonly grave: ReadonlySet<string>;
}

/**
 * Gravest first: what concerns the audience, by weight, and within a weight what can break or hurt. The rest as a
 * reader comes to them: the guide, the lists, the wiring, the code, other files.
 */
export function worstFirst(findings: readonly Finding[], build: Build, ranking: Ranking): Finding[] {
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
    return { rank: rankOf(finding, ranking), ...first };
  };
  return findings
    .map((finding) => ({ finding, key: keyOf(finding) }))
    .sort((a, b) => a.key.rank - b.key.rank || a.key.file - b.key.file || a.key.at - b.key.at)
    .map(({ finding }) => finding);
}

function rankOf({ audience, weight, check }: Finding, ranking: Ranking): number {
  const isForOthers = audience === 'publisher' && ranking.audience === 'builder';
  return (isForOthers ? 10 : 0) + 2 * weights.indexOf(weight) + (ranking.grave.has(check) ? 0 : 1);
}

function offsetOf(place: Place): number {
  return place.kind === 'text' ? place.span[0] : 0;
}
