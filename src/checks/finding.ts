import type { Judged } from '#core/assembled.ts';
import { digestOf } from '#core/digest.ts';
import type { Finding, Weight } from '#core/finding.ts';
import type { Key } from '#core/key.ts';
import type { Place } from '#core/place.ts';
import { loweredChecks } from './acceptance.ts';
import type { Check, FindingDraft } from './defineCheck.ts';
import { stepAt } from './stepAt.ts';

/** Gives drafts their names, digests and weights. */
export function findingsFrom(check: Check, drafts: readonly FindingDraft[], judged: Judged): Finding[] {
  const findings = drafts.map((draft) => findingFrom(check, draft, judged));
  const counts = new Map<string, number>();
  for (const { id } of findings) counts.set(id, (counts.get(id) ?? 0) + 1);
  const seen = new Map<string, number>();
  return findings.map((finding) => {
    if (counts.get(finding.id) === 1) return finding;
    const id = `${finding.id}~${digestOf(finding.sides.map(({ digest }) => digest).join()).slice(0, 6)}`;
    const before = seen.get(id) ?? 0;
    seen.set(id, before + 1);
    return { ...finding, id: before === 0 ? id : `${id}-${before + 1}` };
  });
}

function findingFrom(check: Check, draft: FindingDraft, judged: Judged): Finding {
  const sides = distinct(draft.sides);
  const steps = sides.flatMap((place) => stepAt(judged.build.instructions, place) ?? []);
  return {
    id: `${check.id}:${draft.subjects.join('+')}${draft.mark === undefined ? '' : `~${draft.mark}`}`,
    check: check.id,
    weight: weightOf(check, draft, judged),
    audience: check.audience,
    subjects: [...new Set<Key>([...draft.subjects, ...steps.map((id): Key => `step:${id}`)])],
    sides: sides.map((place) => ({ place, digest: digestOf(place.kind === 'text' ? place.quote : place.file) })),
    message: draft.message,
    consequence: draft.consequence,
    remedy: draft.remedy,
    mend: draft.mend ?? null,
    lapsed: null,
  };
}

function weightOf(check: Check, draft: FindingDraft, judged: Judged): Weight {
  const own = draft.weight ?? check.weight;
  const sure = draft.basis === undefined || draft.basis === 'declared' || draft.basis === 'derived';
  const capped = own === 'halts' && !sure ? 'slows' : own;
  const isDismissed = loweredChecks(judged.build.settings).has(check.id) && check.firm !== true;
  return isDismissed ? lower[capped] : capped;
}

const lower: Readonly<Record<Weight, Weight>> = { halts: 'slows', slows: 'tidy', tidy: 'tidy' };

function distinct(places: readonly Place[]): Place[] {
  const seen = new Set<string>();
  return places.filter((place) => {
    const name = place.kind === 'text' ? `${place.file} ${place.span.join()}` : JSON.stringify(place);
    return seen.has(name) ? false : seen.add(name) !== undefined;
  });
}
