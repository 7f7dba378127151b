import type { Accepting } from '../accept.ts';
import { findingDocument } from './findingDocument.ts';

/** JSON output of `accept`. */
export function acceptDocument({ accepted, takenBack, judgement }: Accepting): Record<string, unknown> {
  return {
    format: 1,
    verdict: judgement.verdict,
    accepted: accepted.map(({ finding, reason }) => ({ ...findingDocument(finding), reason })),
    takenBack,
  };
}
