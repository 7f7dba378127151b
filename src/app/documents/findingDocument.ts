import type { Finding } from '#core/finding.ts';
import { placeDocument } from './placeDocument.ts';

/** A finding as JSON output gives it. */
export function findingDocument(finding: Finding): Record<string, unknown> {
  const { id, check, weight, audience, subjects, message, consequence, remedy, sides, mend, lapsed } = finding;
  return {
    id,
    check,
    weight,
    audience,
    subjects,
    message,
    consequence,
    remedy,
    places: sides.map(({ place }) => placeDocument(place)),
    mend,
    lapsed,
  };
}
