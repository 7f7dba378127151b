import type { Judgement } from '../check.ts';
import { noteOnHazards } from '../listCautions.ts';
import { findingDocument } from './findingDocument.ts';
import { proposalDocument } from './proposalDocument.ts';

/** JSON output of `check`. */
export function checkDocument({
  verdict,
  findings,
  accepted,
  lowered,
  ran,
  confirm,
  judged,
}: Judgement): Record<string, unknown> {
  return {
    format: 1,
    verdict,
    findings: findings.map(findingDocument),
    accepted: accepted.map(({ finding, reason }) => ({ ...findingDocument(finding), reason })),
    lowered,
    ran,
    confirm: confirm.map(proposalDocument),
    note: noteOnHazards(judged.facts),
  };
}
