import type { Finding } from '#core/finding.ts';

/** Findings of one kind that are read, numbered and accepted together. */
export interface FindingGroup {
  readonly findings: readonly [Finding, ...Finding[]];
}

/** Findings of one check, weight and audience beyond which they are shown as one. */
const mostApart = 3;

/** Puts findings of which there are many of a kind into one group, in the place of the first; others stay single. */
export function groupFindings(findings: readonly Finding[]): FindingGroup[] {
  const kinds = new Map<string, Finding[]>();
  for (const finding of findings) {
    const kind = kindOf(finding);
    kinds.set(kind, [...(kinds.get(kind) ?? []), finding]);
  }
  const grouped = new Set<string>();
  return findings.flatMap((finding): FindingGroup[] => {
    const kind = kindOf(finding);
    const alike = kinds.get(kind) ?? [];
    const [first, ...more] = alike;
    if (alike.length <= mostApart || first === undefined) return [{ findings: [finding] }];
    if (grouped.has(kind)) return [];
    grouped.add(kind);
    return [{ findings: [first, ...more] }];
  });
}

function kindOf({ check, weight, audience }: Finding): string {
  return `${check} ${weight} ${audience}`;
}
