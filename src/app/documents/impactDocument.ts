import type { ImpactReport } from '../impact.ts';
import { findingDocument } from './findingDocument.ts';
import { placeDocument } from './placeDocument.ts';

/** JSON output of `impact`. */
export function impactDocument({ impact, ticked, judgement }: ImpactReport): Record<string, unknown> {
  return {
    format: 1,
    verdict: judgement.verdict,
    changes: impact.map(({ changed, name, at, isGone, place, items, findings }) => ({
      changed,
      name,
      at,
      gone: isGone,
      place: place === null ? null : placeDocument(place),
      items: items.map(({ id, kind, place: where, why, done }) => ({
        id,
        kind,
        place: placeDocument(where),
        why,
        done,
      })),
      findings: findings.map(findingDocument),
    })),
    ticked: ticked.map(({ id }) => id),
  };
}
