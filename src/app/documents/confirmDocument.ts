import { type Proposal, proposalId } from '#core/proposal.ts';
import type { Judgement } from '../check.ts';
import { offered, type TextEdit } from '../confirm.ts';
import { proposalDocument } from './proposalDocument.ts';

/** What a call of `confirm` did; all empty where it only looked. */
export interface ConfirmedSoFar {
  readonly confirmed: readonly Proposal[];
  readonly refused: readonly Proposal[];
  readonly declined: readonly Proposal[];
  readonly written: readonly string[];
  /** Edits that were asked for without writing. */
  readonly edits: readonly TextEdit[];
}

/** JSON output of `confirm`: what is still proposed, and what was done. */
export function confirmDocument(judgement: Judgement, done: ConfirmedSoFar): Record<string, unknown> {
  const { judged, verdict, coverageIfConfirmed, confirm } = judgement;
  const numbers = new Map(offered(judgement).map((proposal, index) => [proposal, index + 1]));
  return {
    format: 1,
    verdict,
    coverage: { ...judged.ledger.coverage, proposed: coverageIfConfirmed },
    proposals: judged.facts.proposals.map((proposal) => ({
      ...proposalDocument(proposal),
      number: numbers.get(proposal) ?? null,
    })),
    confirm: confirm.map(proposalId),
    confirmed: done.confirmed.map(proposalDocument),
    refused: done.refused.map(proposalDocument),
    declined: done.declined.map(proposalId),
    written: done.written,
    edits: done.edits.map(({ edit }) => edit),
  };
}
